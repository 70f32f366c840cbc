/**
 * What every number of the project file is called in the user's words, its unit and the range it may take.
 * The schema, the sentences about a wrong value and the input fields all read this one table.
 * Keys are key paths of the file with `[]` for the place in a list.
 */

export interface NumberRange {
  /** Lowest value allowed, itself included unless `open`. */
  from: number;
  to: number;
  /** The lowest value itself is not allowed. */
  open: boolean;
  whole: boolean;
}

export interface NumberField {
  label: string;
  /** '' for plain numbers and shares. */
  unit: string;
  range: NumberRange;
  /** What to give, as it follows "Give". */
  wanted: string;
}

const from = (low: number, to: number): NumberRange => ({ from: low, to, open: false, whole: false });
const above = (low: number, to: number): NumberRange => ({ from: low, to, open: true, whole: false });
const whole = (low: number, to: number): NumberRange => ({ from: low, to, open: false, whole: true });

const field = (label: string, unit: string, range: NumberRange, wanted: string): NumberField => {
  return { label, unit, range, wanted };
};

const MONEY_MOST = 1e9;
const MINUTES_MOST = 1e6;

const PIECE_FIELDS = {
  'piece.sides': field('Number of sides', '', whole(3, 60), 'the number of staves'),
  'piece.slopeDeg': field('Slope', '°', from(0, 90), 'the slope from upright'),
  'piece.size.mm': field('Size', 'mm', above(0, 5000), 'the finished size'),
  'piece.heightMm': field('Height', 'mm', above(0, 3000), 'the height along the face'),
  'piece.thicknessMm': field('Thickness', 'mm', above(0, 200), 'the finished thickness of the staves'),
  'piece.insert.diameterMm': field('Insert diameter', 'mm', above(0, 20000), 'the diameter of what must fit inside'),
  'piece.insert.clearanceMm': field('Insert clearance', 'mm', from(0, 5000), 'the clearance wanted on the diameter'),
  'stock.stripLengthMm': field('Strip length', 'mm', from(0, 20000), 'the length of one strip'),
  'stock.stripCount': field('Number of strips', '', whole(1, 60), 'how many strips the staves are cut from'),
  'stock.trimMm': field('Trim', 'mm', from(0, 20000), 'what is trimmed off the end of a strip'),
  'stock.holdMm': field('Hold length', 'mm', from(0, 20000), 'the length that must stay in hand at the last cut'),
  'stock.thicknessSigmaMm': field('Thickness spread', 'mm', from(0, 20000), 'the spread of the thickness'),
  'stock.cupMm': field('Cup', 'mm', from(0, 20000), 'the hollow across one stave'),
  'stock.edgeTaperDeg': field('Edge taper', '°', from(0, 5), 'how far the edges are from parallel'),
  'limits.showGapMm': field('Show gap limit', 'mm', from(0, 10), 'the widest gap allowed where it shows'),
  'limits.hiddenGapMm': field('Hidden gap limit', 'mm', from(0, 10), 'the widest gap allowed where it is hidden'),
  'limits.remedyGapMm': field('Remedy limit', 'mm', from(0, 10), 'the widest gap that can still be put right'),
  'costs.batch': field('Batch', '', whole(1, 1000), 'how many good pieces are wanted'),
  'costs.stockPerRing': field('Stock per ring', '', from(0, MONEY_MOST), 'the cost of the wood for one ring'),
  'costs.testStockPerRound': field(
    'Stock per test round',
    '',
    from(0, MONEY_MOST),
    'the cost of the wood for one test',
  ),
  'costs.ratePerHour': field('Hourly rate', '', from(0, MONEY_MOST), 'what an hour of work costs'),
  'costs.remedyMinutes': field('Remedy time', 'min', from(0, MINUTES_MOST), 'the minutes it takes to put a ring right'),
  'costs.assemblyMinutes': field('Assembly time', 'min', from(0, MINUTES_MOST), 'the minutes one glue-up takes'),
  'run.trials': field('Number of rings to simulate', '', whole(100, 10_000_000), 'how many rings to simulate'),
  'run.seed': field('Seed', '', whole(0, 2 ** 32 - 1), 'the seed of the random draws'),
  'run.settle.relative': field('Settling tolerance', '', above(0, 1), 'the relative error to settle within'),
};

const METHOD_FIELDS = {
  'methods[].tilt.biasDeg': field('Tilt bias', '°', from(-5, 5), 'the known error of the tilt'),
  'methods[].tilt.sharedDeg': field('Shared tilt error', '°', from(0, 5), 'the error of one setting of the tilt'),
  'methods[].tilt.sideDeg': field('Tilt error per side', '°', from(0, 5), 'the extra error of each side of the blade'),
  'methods[].tilt.perCutDeg': field('Tilt error per cut', '°', from(0, 5), 'the error that changes from cut to cut'),
  'methods[].tilt.aimDeg': field('Aim', '°', from(-5, 5), 'the deliberate offset of the tilt'),
  'methods[].guide.zeroDeg': field('Square error of the guide', '°', from(0, 5), 'the error of its square setting'),
  'methods[].guide.settingDeg': field('Swing error', '°', from(0, 5), 'the error of finding the swing on the scale'),
  'methods[].guide.slotDeg': field('Slot play', '°', from(0, 5), 'the angle the play in the slot allows'),
  'methods[].guide.seatMm': field('Seating error', 'mm', from(0, 5), 'how far the work is off the guide when it seats'),
  'methods[].guide.faceMm': field('Guide face', 'mm', from(20, 2000), 'the length of the face the work lies against'),
  'methods[].width.sharedMm': field('Shared width error', 'mm', from(0, 10), 'the error of setting the mark or stop'),
  'methods[].width.perCutMm': field('Width error per cut', 'mm', from(0, 10), 'the error of lining up each cut'),
  'methods[].width.driftMeanMm': field('Stop drift', 'mm', from(-1, 1), 'how far the stop creeps with each stave'),
  'methods[].width.driftSigmaMm': field('Spread of the stop drift', 'mm', from(0, 10), 'the spread of that creep'),
  'methods[].width.chipChance': field(
    'Chance of a chip',
    '',
    from(0, 1),
    'the share of staves with a chip at the stop',
  ),
  'methods[].width.chipMeanMm': field('Chip size', 'mm', from(0, 10), 'the mean size of such a chip'),
  'methods[].blade.diameterMm': field('Blade diameter', 'mm', above(0, 2000), 'the diameter of the blade'),
  'methods[].blade.plateMm': field('Blade plate', 'mm', above(0, 50), 'the thickness of the plate'),
  'methods[].blade.collarMm': field('Blade collar', 'mm', above(0, 1000), 'the diameter of the collar that clamps it'),
  'methods[].blade.kerfMm': field('Kerf', 'mm', above(0, 50), 'the width of the cut'),
  'methods[].blade.kerfSigmaMm': field('Kerf spread', 'mm', from(0, 10), 'the spread of the width of the cut'),
  'methods[].blade.stiffnessNPerMm': field('Blade stiffness', 'N/mm', above(0, 1e6), 'the stiffness at the rim'),
  'methods[].blade.forceMeanN': field('Side force', 'N', from(-500, 500), 'the mean side force on the blade'),
  'methods[].blade.forceSigmaN': field('Side force spread', 'N', from(0, 500), 'its spread from cut to cut'),
  'methods[].blade.forceWithinCutN': field('Side force within a cut', 'N', from(0, 500), 'its spread along one cut'),
  'methods[].blade.snagChance': field('Chance of a snag', '', from(0, 1), 'the share of cuts with a snag'),
  'methods[].blade.snagMeanN': field('Snag force', 'N', from(0, 500), 'the mean force of a snag'),
  'methods[].blade.recutAboveMm': field('Recut limit', 'mm', from(0, 100), 'the mark of a snag that is seen and recut'),
  'methods[].assembly.freeJoints': field('Free joints', '', whole(2, 60), 'how many joints are still free at the end'),
  'methods[].assembly.pullUpMm': field('Pull-up', 'mm', from(0, 10), 'the gap that clamping squeezes shut'),
  'methods[].assembly.truingMm': field('Truing error', 'mm', from(0, 10), 'how far off a trued end face is'),
  'methods[].test.maxRounds': field('Test rounds', '', whole(0, 20), 'the most test rounds to make'),
  'methods[].test.readingMm': field('Reading error', 'mm', from(0, 100), 'the error of reading a test piece'),
  'methods[].test.stopWhenMm': field('Test limit', 'mm', from(0, 1000), 'the reading that is good enough'),
  'methods[].test.dialDeg': field('Dialling error', '°', from(0, 5), 'the error of each correction'),
  'methods[].test.dialShare': field('Dialling error share', '', from(0, 1), 'the error as a share of the correction'),
  'methods[].test.armMm': field('Test arm', 'mm', above(0, 5000), 'the length of the arm the pair is read over'),
  'methods[].minutes.setUp': field('Set-up time', 'min', from(0, MINUTES_MOST), 'the minutes one set-up takes'),
  'methods[].minutes.perCut': field('Time per cut', 'min', from(0, MINUTES_MOST), 'the minutes one cut takes'),
  'methods[].minutes.perTestRound': field('Time per test', 'min', from(0, MINUTES_MOST), 'the minutes a test takes'),
};

export const NUMBER_FIELDS = { ...PIECE_FIELDS, ...METHOD_FIELDS } as const;

export type NumberKey = keyof typeof NUMBER_FIELDS;

/** The key of a path such as `methods[2].blade.kerfMm` in the table; undefined when no number stands there. */
export function numberKeyAt(path: string): NumberKey | undefined {
  const key = path.replace(/\[\d+\]/g, '[]');
  return Object.hasOwn(NUMBER_FIELDS, key) ? (key as NumberKey) : undefined;
}

/** Its entry. */
export function fieldAt(path: string): NumberField | undefined {
  const key = numberKeyAt(path);
  return key && NUMBER_FIELDS[key];
}

export function withinRange(range: NumberRange, value: number): boolean {
  if (!Number.isFinite(value) || value > range.to) return false;
  if (range.whole && !Number.isInteger(value)) return false;
  return range.open ? value > range.from : value >= range.from;
}
