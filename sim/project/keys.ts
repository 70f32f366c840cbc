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
    onPage: 'Rings for each method',
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
  rule: choice({
    label: 'The closing rule',
    onPage: 'How joints close',
    options: {
      contact: { label: 'Contact', note: 'joints press where they touch' },
      touch: { label: 'Touch', note: 'quicker; gaps come out too large' },
    },
    default: 'contact',
  }),
  settle: optionalSection('the settling', {
    relative: number({
      label: 'Settling tolerance',
      range: above(0, 1),
      wanted: 'the relative error to settle within',
    }),
  }),
});

/** What may stand on the client's sheet; whatever is left out here is shown. */
export const SHOW = optionalSection('what the sheet shows', {
  drawing: shown({ label: 'The drawing' }),
  why: shown({ label: 'Why errors add up', onPage: 'Why small errors show' }),
  dots: shown({ label: 'The dots', onPage: 'Fifty rings as dots' }),
  making: shown({ label: 'How it is made', onPage: 'What is done about it' }),
  eye: shown({ label: 'What an eye sees' }),
  season: shown({ label: 'What the seasons do' }),
  remains: shown({ label: 'What remains' }),
});

/** The maker's own words for the sheets, short enough for a sheet to stay one page, and what they show. */
export const EXPLAIN = optionalSection('the words for the sheets', {
  /** Absent: the title of the project. */
  title: shortText({ label: 'Title of the sheet', onPage: 'Title', most: 120 }),
  /** For whom the piece is made. */
  client: shortText({ label: 'The client’s line', onPage: 'Line for the client', most: 120 }),
  /** A blank line starts a new paragraph. */
  closing: shortText({ label: 'The closing words', onPage: 'Closing words', most: 800 }),
  /** Name of the method the sheets are about. Absent: the one that does best. */
  method: optionalText({ label: 'The method on the sheets', advice: 'Give the name of a method.' }),
  show: SHOW,
});

export const PROJECT = section('the project', {
  format: fixed('Format', FILE_FORMAT),
  version: fixed('Version', FILE_VERSION),
  title: text({ label: 'Title', advice: 'Give the piece a title.' }),
  display: choice({
    label: 'Display',
    onPage: 'Lengths in',
    options: { metric: 'Millimetres', inch: 'Inches' },
    default: 'metric',
  }),
  piece: PIECE,
  stock: STOCK,
  limits: LIMITS,
  costs: COSTS,
  methods: listOf('Methods', 'Give a list with at least one named method.', METHOD),
  run: RUN,
  explain: EXPLAIN,
});
