/** The whole project file: one table of its keys, in the order in which files hold them. */
import {
  above,
  choice,
  fixed,
  listOf,
  number,
  optionalSection,
  optionalText,
  section,
  shortText,
  shown,
  text,
  whole,
} from './key';
import { METHOD } from './method-keys';
import { COSTS, LIMITS, PIECE, STOCK } from './piece-keys';

export const FILE_FORMAT = 'ringtrue';
export const FILE_VERSION = 1;

export const RUN = section('the run', {
  trials: number({
    label: 'Number of rings to simulate',
    range: whole(100, 10_000_000),
    wanted: 'how many rings to simulate',
    default: 100_000,
    help: 'Each is one ring made anew with errors drawn by chance. Four times as many halve what stands in brackets.',
  }),
  seed: number({
    label: 'Seed',
    range: whole(0, 2 ** 32 - 1),
    wanted: 'the seed of the random draws',
    default: 1,
    help: 'The same seed gives the same rings, and so the same digits.',
  }),
  rule: choice({ label: 'The closing rule', options: ['contact', 'touch'], default: 'contact' }),
  settle: optionalSection('the settling', {
    relative: number({
      label: 'Settling tolerance',
      range: above(0, 1),
      wanted: 'the relative error to settle within',
    }),
  }),
});

/** Longest of the maker's own words, so that a sheet stays one page. */
export const EXPLAIN_LENGTHS = { title: 120, client: 120, closing: 800 } as const;

/** What may stand on the client's sheet; whatever is left out here is shown. */
export const SHOW = optionalSection('what the sheet shows', {
  drawing: shown('The drawing'),
  why: shown('Why errors add up'),
  dots: shown('The dots'),
  making: shown('How it is made'),
  eye: shown('What an eye sees'),
  season: shown('What the seasons do'),
  remains: shown('What remains'),
});

/** The maker's own words for the sheets, and what they show. */
export const EXPLAIN = optionalSection('the words for the sheets', {
  /** Absent: the title of the project. */
  title: shortText('Title of the sheet', EXPLAIN_LENGTHS.title),
  /** For whom the piece is made. */
  client: shortText('The client’s line', EXPLAIN_LENGTHS.client),
  /** A blank line starts a new paragraph. */
  closing: shortText('The closing words', EXPLAIN_LENGTHS.closing),
  /** Name of the method the sheets are about. Absent: the one that does best. */
  method: optionalText({ label: 'The method on the sheets', advice: 'Give the name of a method.' }),
  show: SHOW,
});

export const PROJECT = section('the project', {
  format: fixed('Format', FILE_FORMAT),
  version: fixed('Version', FILE_VERSION),
  title: text({ label: 'Title', advice: 'Give the piece a title.' }),
  display: choice({ label: 'Display', options: ['metric', 'inch'], default: 'metric' }),
  piece: PIECE,
  stock: STOCK,
  limits: LIMITS,
  costs: COSTS,
  methods: listOf('Methods', 'Give a list with at least one named method.', METHOD),
  run: RUN,
  explain: EXPLAIN,
});
