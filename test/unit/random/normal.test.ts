import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillNormals, fillUniforms } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { TAIL_START } from '../../../sim/random/ziggurat';
import { normalCdf } from '../../../sim/statistics/normal-distribution';
import { kolmogorovDistance, kolmogorovLimit } from '../../support/kolmogorov';
import { correlation } from './correlation';

const normals = (seed: number, count: number): Float64Array => {
  const out = new Float64Array(count);
  fillNormals(stream(seed, 'normals', 0), out);
  return out;
};

describe('normal numbers', () => {
  test.each([0, 1, 2])('follow the normal distribution, seed %d', (seed) => {
    const sample = normals(seed, 500_000);
    expect(kolmogorovDistance(sample, normalCdf)).toBeLessThan(kolmogorovLimit(sample.length));
  });

  test('would be found out if their spread were 1 % too large', () => {
    const sample = normals(0, 500_000).map((z) => 1.01 * z);
    expect(kolmogorovDistance(sample, normalCdf)).toBeGreaterThan(kolmogorovLimit(sample.length));
  });

  test('have the moments 0, 1, 0, 3 within four standard errors', () => {
    const n = 2_000_000;
    const sample = normals(3, n);
    const moment = (order: number): number => sample.reduce((sum, z) => sum + z ** order, 0) / n;
    // Variances of z, z², z³, z⁴: 1, 2, 15, 96. Four standard errors: one false alarm in 16,000 each.
    expect(Math.abs(moment(1))).toBeLessThan(4 * Math.sqrt(1 / n));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(moment(3))).toBeLessThan(4 * Math.sqrt(15 / n));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
  });

  test('reach beyond the base layer on both sides as often as they should', () => {
    const n = 8_000_000;
    const sample = normals(4, n);
    for (const limit of [TAIL_START, 4, 4.5]) {
      for (const side of [-1, 1]) {
        const seen = sample.reduce((count, z) => (side * z > limit ? count + 1 : count), 0);
        const wanted = n * normalCdf(-limit);
        expect(Math.abs(seen - wanted)).toBeLessThan(4 * Math.sqrt(wanted));
      }
    }
  });

  test('do not follow from the number before', () => {
    const sample = normals(5, 500_000);
    const size = sample.map(Math.abs);
    const limit = 4 / Math.sqrt(sample.length);
    for (const lag of [1, 2, 3]) {
      expect(Math.abs(correlation(sample.subarray(lag), sample.subarray(0, -lag)))).toBeLessThan(limit);
      expect(Math.abs(correlation(size.subarray(lag), size.subarray(0, -lag)))).toBeLessThan(limit);
    }
  });

  test('are the same whether filled at once or in pieces', () => {
    const whole = normals(6, 800);
    fc.assert(
      fc.property(fc.array(fc.nat(800), { maxLength: 5 }), (cuts) => {
        const pieces = new Float64Array(800);
        const generator = stream(6, 'normals', 0);
        const ends = [...cuts.sort((a, b) => a - b), 800];
        let from = 0;
        for (const to of ends) {
          fillNormals(generator, pieces, from, to);
          from = to;
        }
        expect(pieces.every((z, i) => z === whole[i])).toBe(true);
      }),
    );
  });

  test('are written to the asked places alone', () => {
    const out = new Float64Array(6).fill(9);
    fillNormals(stream(1, 'normals', 0), out, 2, 4);
    expect([...out].map((z) => z === 9)).toEqual([true, true, false, false, true, true]);
    fillUniforms(stream(1, 'uniforms', 0), out, 5);
    expect([...out].map((z) => z === 9)).toEqual([true, true, false, false, true, false]);
  });
});

describe('uniform numbers', () => {
  test.each([0, 1, 2])('are evenly spread, seed %d', (seed) => {
    const sample = new Float64Array(500_000);
    fillUniforms(stream(seed, 'uniforms', 0), sample);
    expect(kolmogorovDistance(sample, (u) => u)).toBeLessThan(kolmogorovLimit(sample.length));
  });
});
