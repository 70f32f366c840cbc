/**
 * The project document as the engine and the pages see it: every key present, every default filled in.
 * Lengths mm, angles degrees, forces newtons, minutes. The file that carries it is read by `read.ts`.
 */

export type Grain = 'alongRing' | 'upStave';
export type ShowFace = 'outside' | 'inside' | 'both';
export type SizeBy = 'outsideFlats' | 'outsideCorners' | 'clearOpening' | 'staveWidth';
export type Sequence = 'flipFace' | 'swapSides';
export type WidthBy = 'markedLine' | 'fixedStop' | 'markedEach';
export type AssemblyBy = 'allAtOnce' | 'oneByOne' | 'twoHalves';
export type Ends = 'free' | 'flush';
export type TestKind = 'none' | 'fullRing' | 'halfRing' | 'twoHalvesTogether' | 'pair';
export type Rule = 'contact' | 'touch';

export interface Insert {
  diameterMm: number;
  /** Wanted on the diameter. */
  clearanceMm: number;
}

export interface Piece {
  sides: number;
  /** Measured from upright: 0 vessel, 90 flat frame. */
  slopeDeg: number;
  grain: Grain;
  size: { by: SizeBy; mm: number };
  /** Along the face; a flat frame's member width. */
  heightMm: number;
  thicknessMm: number;
  showFace: ShowFace;
  insert?: Insert;
}

export interface Stock {
  wood: string;
  /** Absent: just enough. */
  stripLengthMm?: number;
  stripCount: number;
  trimMm: number;
  holdMm: number;
  thicknessSigmaMm: number;
  cupMm: number;
  edgeTaperDeg: number;
}

export interface Limits {
  showGapMm: number;
  hiddenGapMm: number;
  remedyGapMm: number;
}

export interface Costs {
  batch: number;
  stockPerRing: number;
  testStockPerRound: number;
  ratePerHour: number;
  remedyMinutes: number;
  assemblyMinutes: number;
}

export interface Tilt {
  biasDeg: number;
  /** Standard deviation (`normal`) or half-width (`uniform`). */
  sharedDeg: number;
  shape: 'normal' | 'uniform';
  sideDeg: number;
  perCutDeg: number;
  reset: 'once' | 'everyCut';
  aimDeg: number;
}

export interface Guide {
  zeroDeg: number;
  settingDeg: number;
  slotDeg: number;
  seatMm: number;
  faceMm: number;
}

export interface Width {
  by: WidthBy;
  sharedMm: number;
  perCutMm: number;
  driftMeanMm: number;
  driftSigmaMm: number;
  chipChance: number;
  chipMeanMm: number;
}

export interface Blade {
  diameterMm: number;
  plateMm: number;
  collarMm: number;
  kerfMm: number;
  kerfSigmaMm: number;
  /** null: computed from the plate. */
  stiffnessNPerMm: number | null;
  forceMeanN: number;
  forceSigmaN: number;
  forceWithinCutN: number;
  snagChance: number;
  snagMeanN: number;
  /** null: nothing is recut. */
  recutAboveMm: number | null;
}

export interface Assembly {
  by: AssemblyBy;
  freeJoints: number;
  ends: Ends;
  pullUpMm: number;
  truingMm: number;
}

export interface TestCuts {
  kind: TestKind;
  maxRounds: number;
  readingMm: number;
  stopWhenMm: number;
  dialDeg: number;
  dialShare: number;
  /** Absent: the stave width. */
  armMm?: number;
}

export interface Minutes {
  setUp: number;
  perCut: number;
  perTestRound: number;
}

export interface Method {
  name: string;
  sequence: Sequence;
  wideFace: 'down' | 'up';
  tilt: Tilt;
  guide: Guide;
  width: Width;
  blade: Blade;
  assembly: Assembly;
  test: TestCuts;
  minutes: Minutes;
}

export interface RunSettings {
  trials: number;
  seed: number;
  rule: Rule;
  settle?: { relative: number };
}

/** What may stand on the client's sheet; whatever is left out here is shown. */
export const EXPLAIN_PARTS = ['drawing', 'why', 'dots', 'making', 'eye', 'season', 'remains'] as const;
export type ExplainPart = (typeof EXPLAIN_PARTS)[number];

/** The maker's own words for the sheets, and what they show. */
export interface Explain {
  /** Absent: the title of the project. */
  title?: string;
  /** For whom the piece is made. */
  client?: string;
  /** A blank line starts a new paragraph. */
  closing?: string;
  /** Name of the method the sheets are about. Absent: the one that does best. */
  method?: string;
  show?: { [Part in ExplainPart]?: boolean };
}

export interface Project {
  format: 'ringtrue';
  version: 1;
  title: string;
  display: 'metric' | 'inch';
  piece: Piece;
  stock: Stock;
  limits: Limits;
  costs: Costs;
  methods: Method[];
  run: RunSettings;
  explain?: Explain;
}

/** The names the error budget uses for the sources, in the order the tables show them. */
export const SOURCE_NAMES = [
  'tiltShared',
  'tiltSide',
  'tiltPerCut',
  'guideZero',
  'guideSetting',
  'guideSlot',
  'seat',
  'flatness',
  'widthShared',
  'widthPerCut',
  'drift',
  'chips',
  'kerf',
  'thickness',
  'deflection',
  'bulge',
  'snags',
  'truing',
] as const;
export type SourceName = (typeof SOURCE_NAMES)[number];
