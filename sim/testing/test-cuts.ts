/**
 * The rounds of test cuts that precede a piece: cut a test piece, read it, stop if the reading is small enough, else
 * dial the setting back by what the reading says.
 */
import type { TestCuts } from '../project/document';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import type { TestSetting } from './test-reading';

/** Test cuts of a method, ready to be simulated. */
export interface TestPlan extends TestSetting {
  /** Reading of the piece's shared errors is an output; that of a fresh test piece's own errors comes from here. */
  ownErrors: { open(seed: number, block: number, label: string): (out: Float64Array, count: number) => void };
  /** What one degree dialled into the setting does to every output. */
  perDegree: Float64Array;
  /** Reading that the deliberate aim causes and that is no error, mm. */
  aimReadingMm: number;
}

/**
 * Corrects the shared outputs of `count` set-ups in place (ring by ring, as wide as the matrix) and writes the rounds
 * each took. Streams are those of the block, so one call a block.
 */
export function runTestCuts(
  test: TestPlan,
  settings: TestCuts,
  shared: Float64Array,
  matrix: { width: number; readingAt: number },
  count: number,
  seed: number,
  block: number,
  rounds: Uint8Array,
): void {
  const { width, readingAt } = matrix;
  const own = new Float64Array(count);
  const readingError = new Float64Array(count);
  const dialError = new Float64Array(count);
  rounds.fill(0, 0, count);
  for (let round = 1; round <= settings.maxRounds; round++) {
    own.fill(0);
    test.ownErrors.open(seed, block, `test piece ${round}`)(own, count);
    fillNormals(stream(seed, `test reading ${round}`, block), readingError);
    fillNormals(stream(seed, `test dial ${round}`, block), dialError);
    for (let k = 0; k < count; k++) {
      // Whoever found the setting good enough in an earlier round has stopped.
      if (rounds[k] !== round - 1) continue;
      const at = k * width;
      const reading = shared[at + readingAt]! - test.aimReadingMm + own[k]! + settings.readingMm * readingError[k]!;
      rounds[k] = Math.abs(reading) <= settings.stopWhenMm ? round | STOPPED : round;
      if (rounds[k] !== round) continue;
      const wanted = -reading / test.mmPerDeg;
      const dialSd = Math.hypot(settings.dialDeg, settings.dialShare * wanted);
      const dialledDeg = wanted + dialSd * dialError[k]!;
      for (let o = 0; o < width; o++) shared[at + o]! += dialledDeg * test.perDegree[o]!;
    }
  }
  for (let k = 0; k < count; k++) rounds[k]! &= ~STOPPED;
}

/** Marks a set-up that has stopped testing; rounds are at most 20. */
const STOPPED = 0x80;
