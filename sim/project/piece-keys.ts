/** The keys of a project file that are about the piece, its wood, its limits and its cost. Lengths mm, angles degrees. */
import { above, choice, from, number, optionalNumber, optionalSection, section, text, whole } from './key';

const MONEY_MOST = 1e9;
const MINUTES_MOST = 1e6;

export const PIECE = section('the piece', {
  sides: number({ label: 'Number of sides', onPage: 'Sides', range: whole(3, 60), wanted: 'the number of staves' }),
  /** Measured from upright: 0 vessel, 90 flat frame. */
  slopeDeg: number({
    label: 'Slope',
    onPage: 'Slope from upright',
    unit: '°',
    range: from(0, 90),
    wanted: 'the slope from upright',
    default: 0,
    help: '0° is an upright vessel, 90° a flat frame.',
  }),
  grain: choice({
    label: 'Grain',
    options: {
      alongRing: { label: 'Around the ring', note: 'staves crosscut from a strip' },
      upStave: { label: 'Up the stave', note: 'staves ripped from a board' },
    },
    default: 'alongRing',
  }),
  size: section('the size', {
    by: choice({
      label: 'The dimension the size is given by',
      onPage: 'Size known by',
      options: {
        outsideFlats: 'Across the outside flats',
        outsideCorners: 'Across the outside corners',
        clearOpening: 'Clear opening, narrow end',
        staveWidth: 'Stave width, wide end',
      },
    }),
    mm: number({ label: 'Size', unit: 'mm', range: above(0, 5000), wanted: 'the finished size' }),
  }),
  /** Along the face; a flat frame's member width. */
  heightMm: number({
    label: 'Height',
    onPage: 'Height along the face',
    unit: 'mm',
    range: above(0, 3000),
    wanted: 'the height along the face',
    help: 'In a flat frame this is the width of its members.',
  }),
  thicknessMm: number({
    label: 'Thickness',
    unit: 'mm',
    range: above(0, 200),
    wanted: 'the finished thickness of the staves',
  }),
  showFace: choice({
    label: 'The face that shows',
    onPage: 'Face that shows',
    options: { outside: 'Outside', inside: 'Inside', both: 'Both' },
    default: 'outside',
  }),
  insert: optionalSection('the insert', {
    diameterMm: number({
      label: 'Insert diameter',
      onPage: 'Its diameter',
      unit: 'mm',
      range: above(0, 20000),
      wanted: 'the diameter of what must fit inside',
    }),
    clearanceMm: number({
      label: 'Insert clearance',
      onPage: 'Clearance wanted on the diameter',
      unit: 'mm',
      range: from(0, 5000),
      wanted: 'the clearance wanted on the diameter',
      default: 0,
      help: 'Added to the diameter of what goes in; the ring’s clear opening must be at least both together.',
    }),
  }),
});

export const STOCK = section('the stock', {
  wood: text({ label: 'Wood', advice: 'Give the name of the wood.', default: 'other' }),
  stripLengthMm: optionalNumber({
    label: 'Strip length',
    onPage: 'Length of a strip',
    unit: 'mm',
    range: from(0, 20000),
    wanted: 'the length of one strip',
    whenEmpty: 'just enough',
    help: 'Of the strip that staves are cut from, one after another. Left empty, it is as long as the cuts need.',
  }),
  stripCount: number({
    label: 'Number of strips',
    onPage: 'Strips the staves are cut from',
    range: whole(1, 60),
    wanted: 'how many strips the staves are cut from',
    default: 1,
    help: 'Staves are shared out among so many strips; each strip pays for its own trimmed and held ends.',
  }),
  trimMm: number({
    label: 'Trim',
    onPage: 'Trimmed off the end',
    unit: 'mm',
    range: from(0, 20000),
    wanted: 'what is trimmed off the end of a strip',
    default: 15,
    help: 'Cut off first, so that the strip begins with a clean, true end.',
  }),
  holdMm: number({
    label: 'Hold length',
    onPage: 'Length that must stay in hand',
    unit: 'mm',
    range: from(0, 20000),
    wanted: 'the length that must stay in hand at the last cut',
    default: 200,
    help: 'The last piece in hand must not get shorter than this: it is what keeps fingers away from the blade.',
  }),
  thicknessSigmaMm: number({
    label: 'Thickness spread',
    unit: 'mm',
    range: from(0, 20000),
    wanted: 'the spread of the thickness',
    default: 0,
    source: 'thickness',
    help: 'How much the staves’ thickness varies; two in three lie within it of the mean, to either side.',
  }),
  cupMm: number({
    label: 'Cup',
    unit: 'mm',
    range: from(0, 20000),
    wanted: 'the hollow across one stave',
    default: 0,
    source: 'flatness',
    help: 'How hollow a strip is across one stave. A hollow face rocks on the table, and the cut with it.',
  }),
  edgeTaperDeg: number({
    label: 'Edge taper',
    unit: '°',
    range: from(0, 5),
    wanted: 'how far the edges are from parallel',
    default: 0,
    alsoOf: 'flatness',
    help: 'How far the two edges of a strip are from parallel; turned over, the strip passes it on to the joint.',
  }),
});

export const LIMITS = section('the limits', {
  showGapMm: number({
    label: 'Show gap limit',
    onPage: 'Widest gap where it shows',
    unit: 'mm',
    range: from(0, 10),
    wanted: 'the widest gap allowed where it shows',
    default: 0.15,
    help: 'A gap is seen as a gap from about 0.1 mm at arm’s length. The line in the chart moves the same limit.',
  }),
  hiddenGapMm: number({
    label: 'Hidden gap limit',
    onPage: 'Widest gap where it is hidden',
    unit: 'mm',
    range: from(0, 10),
    wanted: 'the widest gap allowed where it is hidden',
    default: 0.4,
    help: 'On the side nobody looks at a gap may be wider; beyond this it weakens the joint or lets light through.',
  }),
  remedyGapMm: number({
    label: 'Remedy limit',
    onPage: 'Widest gap that can be put right',
    unit: 'mm',
    range: from(0, 10),
    wanted: 'the widest gap that can still be put right',
    default: 0.5,
    help: 'Above its limit but below this a piece is reworked; beyond it is scrap.',
  }),
});

export const COSTS = section('the costs', {
  batch: number({
    label: 'Batch',
    onPage: 'Good pieces wanted',
    range: whole(1, 1000),
    wanted: 'how many good pieces are wanted',
    default: 1,
    help: 'Made at one setting of the saw. The more there are, the less set-up and tests cost each.',
  }),
  stockPerRing: number({
    label: 'Stock per ring',
    onPage: 'Wood for one ring',
    range: from(0, MONEY_MOST),
    wanted: 'the cost of the wood for one ring',
    default: 0,
    help: 'In the money you count in; the same for every method.',
  }),
  testStockPerRound: number({
    label: 'Stock per test round',
    onPage: 'Wood for one test round',
    range: from(0, MONEY_MOST),
    wanted: 'the cost of the wood for one test',
    default: 0,
    help: 'In the money you count in; the same for every method.',
  }),
  ratePerHour: number({
    label: 'Hourly rate',
    onPage: 'An hour of work',
    range: from(0, MONEY_MOST),
    wanted: 'what an hour of work costs',
    default: 0,
  }),
  remedyMinutes: number({
    label: 'Remedy time',
    onPage: 'Minutes to put a ring right',
    unit: 'min',
    range: from(0, MINUTES_MOST),
    wanted: 'the minutes it takes to put a ring right',
    default: 0,
    help: 'Spent on a ring whose gap is over its limit but can still be put right.',
  }),
  assemblyMinutes: number({
    label: 'Assembly time',
    onPage: 'Minutes to glue up',
    unit: 'min',
    range: from(0, MINUTES_MOST),
    wanted: 'the minutes one glue-up takes',
    default: 0,
    help: 'Dry fit, glue and clamps for one ring.',
  }),
});
