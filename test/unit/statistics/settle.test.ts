import { describe, expect, test } from 'vitest';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { Moments } from '../../../sim/statistics/moments';
import { FIRST_STAGE_BLOCKS, settling } from '../../../sim/statistics/settle';
import { numericalTolerance } from '../../support/numerical-tolerance';

describe('the two-stage rule', () => {
  test('first wants ten blocks, whatever they say', () => {
    for (let blocks = 0; blocks < FIRST_STAGE_BLOCKS; blocks++) {
      expect(settling(new Float64Array(blocks), 0.1)).toEqual({ settled: false, blocksWanted: 10 });
    }
    expect(settling(new Float64Array(10), 0.1)).toEqual({ settled: true, blocksWanted: 10 });
  });

  test('then wants ⌊s²t²/δ²⌋ + 1 blocks in all', () => {
    // derived: 1 to 10 has s² = 55/6; t(0.975, 9) = 2.262 157; δ = 1 gives 46.909…, so 47
    const first = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect(settling(first, 1)).toEqual({ settled: false, blocksWanted: 47 });
    // t(0.95, 9) = 1.833 113 gives 30.80…, so 31
    expect(settling(first, 1, 0.9).blocksWanted).toBe(31);
  });

  test('does not change its mind as more blocks come in', () => {
    const figures = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, ...Array.from({ length: 37 }, () => 5)];
    for (let blocks = 10; blocks <= 47; blocks++) {
      expect(settling(figures.slice(0, blocks), 1)).toEqual({ settled: blocks === 47, blocksWanted: 47 });
    }
  });

  test('refuses a tolerance or a level that cannot be', () => {
    expect(() => settling([], 0)).toThrow('Settling tolerance 0 is not above 0.');
    expect(() => settling([], 1, 1)).toThrow('Confidence level 1 is not between 0 and 1.');
  });
});

describe('what the rule promises', () => {
  const runs = 3000;
  const halfWidth = 0.4;
  /** Share of runs whose mean ends within the tolerance of the true mean 0, when `stopAt` says after how many blocks. */
  const coverage = (stopAt: (figures: Float64Array) => number): number => {
    const figures = new Float64Array(400);
    const generator = stream(21, 'settling', 0);
    let within = 0;
    for (let run = 0; run < runs; run++) {
      fillNormals(generator, figures);
      if (Math.abs(new Moments().add(figures, 0, stopAt(figures)).mean) <= halfWidth) within++;
    }
    return within / runs;
  };

  test('is kept: 95 % of runs end within the tolerance, less three standard errors of this test', () => {
    const share = coverage((figures) => settling(figures, halfWidth).blocksWanted);
    expect(share).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.95 * 0.05) / runs));
  });

  // published: Wübbeler et al. (2010) find that the adaptive procedure of JCGM 101:2008, 7.9, falls short of its 95 %
  test('is broken by the rule that looks again after every block, so this test can tell them apart', () => {
    const share = coverage((figures) => {
      const moments = new Moments();
      for (let blocks = 1; blocks <= figures.length; blocks++) {
        moments.add(figures, blocks - 1, blocks);
        if (blocks >= 2 && 2 * moments.standardError <= halfWidth) return blocks;
      }
      return figures.length;
    });
    expect(share).toBeLessThan(0.95 - 10 * Math.sqrt((0.95 * 0.05) / runs));
  });
});

describe('numerical tolerance', () => {
  // from memory: JCGM 101:2008, 7.9.2, examples for u = 0.000 35 g
  test('is half a unit in the last wanted digit', () => {
    expect(numericalTolerance(0.00035, 2)).toBeCloseTo(0.000005, 15);
    expect(numericalTolerance(0.00035, 1)).toBeCloseTo(0.00005, 15);
    expect(numericalTolerance(2, 1)).toBe(0.5);
    expect(numericalTolerance(123, 2)).toBe(5);
  });

  test('follows the rounding up to the next power of ten', () => {
    expect(numericalTolerance(9.96, 2)).toBe(0.5);
    expect(numericalTolerance(9.94, 2)).toBeCloseTo(0.05, 15);
  });
});
