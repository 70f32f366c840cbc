/**
 * From the reading of a test piece to what is dialled into the saw, and how far both can be trusted. To first order, as
 * everything about test pieces: with a reading of `mmPerDeg` (negative) for each degree too much, the correction is
 * −reading/mmPerDeg, after taking off what a deliberate aim makes even a perfect setting read.
 *
 * One standard deviation each, degrees or mm. After a full correction there is left of the shared error what the
 * reading missed, what the test piece's own cuts added by chance, and what dialling missed; their variances add.
 */
import { ringMaps } from '../closure/ring-maps';
import type { DrawList } from '../errors/draw-list';
import { drawList, methodCuts } from '../errors/sources';
import { ringGeometry } from '../geometry/ring';
import type { Method, Project, TestKind } from '../project/document';
import { aimReading, LEAST_SENSITIVITY_MM_PER_DEG, readingRow, type TestSetting, testSetting } from './test-reading';

export type TestPieceKind = Exclude<TestKind, 'none'>;
export const TEST_PIECE_KINDS = [
  'fullRing',
  'halfRing',
  'twoHalvesTogether',
  'pair',
] as const satisfies readonly TestPieceKind[];

/** Why a kind of test piece cannot be used for a piece. */
export type TestPieceRefusal = 'odd sides' | 'tells too little';

export interface TestPieceFigures extends TestSetting {
  refusal: TestPieceRefusal | null;
  /** What the deliberate aim of the tilt makes a perfect setting read, mm. */
  aimReadingMm: number;
  /** Spread of the reading that the test piece's own cuts cause. */
  ownSdMm: number;
  /** How far the setting that a reading tells may be off. */
  toldSdDeg: number;
  /** The smallest error of the setting that stands out from a perfect setting: two standard deviations. */
  leastToldDeg: number;
}

export interface BenchCard extends TestPieceFigures {
  readingMm: number;
  /** The reading less what the aim makes of it. */
  missMm: number;
  /** Whether that is small enough to leave the setting alone. */
  stop: boolean;
  /** What the setting is to be changed by, positive for a larger angle; said whether or not to stop. */
  dialDeg: number;
  /** Error of dialling that much. */
  diallingSdDeg: number;
  /** How far `dialDeg`, once dialled, may miss: reading, own cuts and dialling together. */
  dialSdDeg: number;
  /** Error of the setting that is expected to stay: nothing after a correction, minus `dialDeg` when left alone. */
  leftOverDeg: number;
  leftOverSdDeg: number;
  /** Spread of what the next test piece will read. */
  nextReadingSdMm: number;
}

/** Variance, mm², that the draws made anew for every cut give a reading. */
export function ownReadingVariance(list: DrawList, row: Float64Array): number {
  const effectOf = ({ index, weight }: { index: number[]; weight: number[] }): number =>
    index.reduce((sum, error, k) => sum + (row[error] ?? 0) * weight[k]!, 0);
  let variance = 0;
  for (const draw of list.draws) {
    if (draw.stage !== 'perCut') continue;
    // Uniform on (−1, 1) has variance ⅓.
    variance += effectOf(draw) ** 2 * (draw.shape === 'uniform' ? 1 / 3 : 1);
  }
  for (const { chance, mean, ...effects } of list.rare) {
    // An exponential of this mean with this chance, else nothing: E[x²] = chance·2·mean².
    variance += effectOf(effects) ** 2 * (2 * chance - chance ** 2) * mean ** 2;
  }
  return variance;
}

/** What one kind of test piece tells about a method's setting, with the method's own figures for reading and arm. */
export function testPieceFigures(project: Project, methodIndex: number, kind: TestPieceKind): TestPieceFigures {
  const method = methodAt(project, methodIndex);
  const geometry = ringGeometry(project.piece);
  const test = { ...method.test, kind, maxRounds: 1 };
  const row = readingRow(ringMaps(geometry), test, project.piece.showFace) ?? new Float64Array();
  const { setting, mmPerDeg } = testSetting(row);
  const list = drawList(project, method, geometry, methodCuts(project, method, geometry));
  const ownSdMm = Math.sqrt(ownReadingVariance(list, row));
  const toldSdDeg = Math.hypot(test.readingMm, ownSdMm) / Math.abs(mmPerDeg);
  return {
    setting,
    mmPerDeg,
    refusal: refusalOf(kind, geometry.sides, mmPerDeg),
    aimReadingMm: aimReading(list, row),
    ownSdMm,
    toldSdDeg,
    leastToldDeg: 2 * toldSdDeg,
  };
}

function refusalOf(kind: TestPieceKind, sides: number, mmPerDeg: number): TestPieceRefusal | null {
  const halves = kind === 'halfRing' || kind === 'twoHalvesTogether';
  if (halves && sides % 2 !== 0) return 'odd sides';
  return Math.abs(mmPerDeg) >= LEAST_SENSITIVITY_MM_PER_DEG ? null : 'tells too little';
}

/**
 * What to dial after a reading, mm, positive when open at the edge that is read. The project must be one that can be
 * computed; a kind of test piece that is refused gives figures that mean nothing.
 */
export function benchCard(project: Project, methodIndex: number, kind: TestPieceKind, readingMm: number): BenchCard {
  const figures = testPieceFigures(project, methodIndex, kind);
  const { test } = methodAt(project, methodIndex);
  const { mmPerDeg, ownSdMm, toldSdDeg } = figures;
  const missMm = readingMm - figures.aimReadingMm;
  const stop = Math.abs(missMm) <= test.stopWhenMm;
  // Adding 0 turns the −0 of a reading of 0 into 0.
  const dialDeg = -missMm / mmPerDeg + 0;
  const diallingSdDeg = Math.hypot(test.dialDeg, test.dialShare * dialDeg);
  const dialSdDeg = Math.hypot(toldSdDeg, diallingSdDeg);
  const leftOverDeg = stop ? 0 - dialDeg : 0;
  const leftOverSdDeg = stop ? toldSdDeg : dialSdDeg;
  return {
    ...figures,
    readingMm,
    missMm,
    stop,
    dialDeg,
    diallingSdDeg,
    dialSdDeg,
    leftOverDeg,
    leftOverSdDeg,
    nextReadingSdMm: Math.hypot(mmPerDeg * leftOverSdDeg, ownSdMm, test.readingMm),
  };
}

function methodAt(project: Project, methodIndex: number): Method {
  const method = project.methods[methodIndex];
  if (!method)
    throw new RangeError(`Method ${methodIndex} is not one of the ${project.methods.length} in the project.`);
  return method;
}
