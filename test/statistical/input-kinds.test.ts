/** The inputs of the metrology examples follow the distributions they are named after. */
import { describe, expect, test } from 'vitest';
import { stream } from '../../sim/random/streams';
import { normalCdf } from '../../sim/statistics/normal-distribution';
import { arcsine, curvilinearTrapezoid, type Input, normal, rectangular, student } from '../support/input-kinds';
import { kolmogorovDistance, kolmogorovLimit } from '../support/kolmogorov';
import { propagate, sdLimit } from '../support/propagate';

const SAMPLES = 200_000;

/** From the density (1/4d)·ln[(w + d)/max(|x|, w − d)] about the middle, half-width w, ends inexact by d. */
function trapezoidCdf(x: number, w: number, d: number): number {
  const beyond = (v: number) => (v * Math.log((w + d) / v) + v) / (4 * d);
  const size = Math.min(Math.abs(x), w + d);
  const flat = (Math.min(size, w - d) * Math.log((w + d) / (w - d))) / (4 * d);
  const half = flat + (size > w - d ? beyond(size) - beyond(w - d) : 0);
  return x < 0 ? 0.5 - half : 0.5 + half;
}

// published: M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", 26.7.3, for five degrees of freedom
function student5Cdf(t: number): number {
  const angle = Math.atan(t / Math.sqrt(5));
  const cosine = Math.cos(angle);
  return 0.5 + (angle + Math.sin(angle) * (cosine + (2 / 3) * cosine ** 3)) / Math.PI;
}

// published: the distributions of JCGM 101:2008, table 1; kurtosis 1.8 and 1.5 of the rectangle and the arcsine, any handbook
const KINDS: [name: string, input: Input, cdf: (x: number) => number, sd: number, kurtosis?: number][] = [
  ['normal', normal(3, 2), (x) => normalCdf((x - 3) / 2), 2, 3],
  ['rectangular', rectangular(-1, 1), (x) => (x + 1) / 2, Math.sqrt(1 / 3), 1.8],
  ['arcsine', arcsine(-1, 1), (x) => 0.5 + Math.asin(x) / Math.PI, Math.sqrt(1 / 2), 1.5],
  ['t with five degrees of freedom', student(1, 2, 5), (x) => student5Cdf((x - 1) / 2), 2 * Math.sqrt(5 / 3)],
  // derived: the figures of the temperature difference of JCGM 101, 9.5, from the density
  ['curvilinear trapezoid', curvilinearTrapezoid(-0.05, 0.05, 0.025), (x) => trapezoidCdf(x, 0.05, 0.025), 0.03004626],
];

describe.each(KINDS)('%s', (name, input, cdf, sd, kurtosis) => {
  const draw = (): Float64Array => {
    const out = new Float64Array(SAMPLES);
    input.fill(stream(11, name, 0), out);
    return out;
  };

  test('follows its distribution, and one 2 % wider does not', () => {
    expect(kolmogorovDistance(draw(), cdf)).toBeLessThan(kolmogorovLimit(SAMPLES));
    const wider = draw().map((x) => input.mean + 1.02 * (x - input.mean));
    const inside = (x: number) => Math.min(1, Math.max(0, cdf(x) || (x < input.mean ? 0 : 1)));
    expect(kolmogorovDistance(wider, inside)).toBeGreaterThan(kolmogorovLimit(SAMPLES));
  });

  test('has the spread it says', () => {
    expect(input.sd).toBeCloseTo(sd, 7);
    const result = propagate((x) => x[0]!, { [name]: input }, { trials: SAMPLES, seed: 12 });
    expect(Math.abs(result.moments.sd - sd)).toBeLessThan(sdLimit(result));
    if (kurtosis !== undefined) expect(Math.abs(result.kurtosis - kurtosis)).toBeLessThan(0.06);
  });
});
