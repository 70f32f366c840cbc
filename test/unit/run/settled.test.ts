import { describe, expect, test } from 'vitest';
import { ringGrading } from '../../../sim/run/block';
import type { BlockResult } from '../../../sim/run/block-result';
import { GOOD, SCRAP } from '../../../sim/run/grade';
import { methodPlan } from '../../../sim/run/plan';
import { settleWatch } from '../../../sim/run/settled';
import { projectWith } from '../../support/projects';

const RINGS = 100;
const plan = methodPlan(projectWith({}), 0, { sizes: false });

/** A block with as many good rings as asked; the gaps are given from the smallest up, the last repeated to the end. */
function blockWith(good: number, gapMm: (ring: number) => number): BlockResult {
  const { result } = ringGrading(plan, RINGS);
  result.showGapMm.forEach((_, ring) => {
    result.showGapMm[ring] = gapMm(ring);
    result.grade[ring] = ring < good ? GOOD : SCRAP;
  });
  return result;
}

/** After how many blocks the watch says settled, up to 100. */
function blocksUntilSettled(relative: number, block: (k: number) => BlockResult): number {
  const watch = settleWatch(relative);
  for (let k = 0; k < 100; k++) if (watch.add(block(k))) return k + 1;
  return Number.POSITIVE_INFINITY;
}

const even = (ring: number): number => ring / RINGS;
/** Up and down from block to block. */
const sway = (k: number): number => (k % 2 === 0 ? 1 : -1);

describe('watching a run', () => {
  test('is over after ten blocks that all say the same', () => {
    expect(blocksUntilSettled(0.01, () => blockWith(80, even))).toBe(10);
  });

  test('waits for a 95th percentile that sways, and for that one alone', () => {
    // Rings 91 to 100 sway by 5 %: s² = 10/9 · (0.05 · 0.945)², δ = 0.02 · 0.945: ⌊s²t²/δ²⌋ + 1 = 36 with t = 2.262
    const high = (k: number) => (ring: number) => (ring > 90 ? 0.945 * (1 + 0.05 * sway(k)) : even(ring));
    expect(blocksUntilSettled(0.02, (k) => blockWith(80, high(k)))).toBe(36);
    const low = (k: number) => (ring: number) => (ring > 90 ? 0.945 : even(ring) * (1 + 0.05 * sway(k)) * 0.9);
    expect(blocksUntilSettled(0.02, (k) => blockWith(80, low(k)))).toBe(10);
  });

  test('waits for a yield that sways', () => {
    // 80 ± 5 in 100: s² = 10/9 · 0.05², δ = 0.02: 36 again
    expect(blocksUntilSettled(0.02, (k) => blockWith(80 + 5 * sway(k), even))).toBe(36);
    expect(blocksUntilSettled(0.1, (k) => blockWith(80 + 5 * sway(k), even))).toBe(10);
  });

  test('does not wait for what no eye can tell: half a micrometre', () => {
    const tiny = (k: number) => () => 0.001 + 0.0001 * sway(k);
    expect(blocksUntilSettled(0.01, (k) => blockWith(80, tiny(k)))).toBe(10);
  });
});
