import { describe, expect, test } from 'vitest';
import { Moments } from '../../sim/statistics/moments';

// published: NIST Statistical Reference Datasets, Univariate Summary Statistics, certified values
const pairs = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];
const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);

const mavro = numbers(`
  2.0018 2.0017 2.0018 2.0019 2.0018 2.0017 2.0015 2.0014 2.0015 2.0015 2.0017 2.0018 2.0018 2.0019 2.0019 2.0021
  2.0020 2.0016 2.0014 2.0013 2.0013 2.0015 2.0015 2.0016 2.0015 2.0014 2.0013 2.0014 2.0015 2.0014 2.0015 2.0016
  2.0015 2.0016 2.0019 2.0020 2.0020 2.0021 2.0022 2.0023 2.0024 2.0025 2.0027 2.0026 2.0026 2.0026 2.0027 2.0026
  2.0025 2.0024`);

const michelso = numbers(`
  299.85 299.74 299.90 300.07 299.93 299.85 299.95 299.98 299.98 299.88 300.00 299.98 299.93 299.65 299.76 299.81
  300.00 300.00 299.96 299.96 299.96 299.94 299.96 299.94 299.88 299.80 299.85 299.88 299.90 299.84 299.83 299.79
  299.81 299.88 299.88 299.83 299.80 299.79 299.76 299.80 299.88 299.88 299.88 299.86 299.72 299.72 299.62 299.86
  299.97 299.95 299.88 299.91 299.85 299.87 299.84 299.84 299.85 299.84 299.84 299.84 299.89 299.81 299.81 299.82
  299.80 299.77 299.76 299.74 299.75 299.76 299.91 299.92 299.89 299.86 299.88 299.72 299.84 299.85 299.85 299.78
  299.89 299.84 299.78 299.81 299.76 299.81 299.79 299.81 299.82 299.85 299.87 299.87 299.81 299.74 299.81 299.94
  299.95 299.80 299.81 299.87`);

/** Correct significant digits of the standard deviation that the rounding of the data to doubles leaves. */
const sets = [
  { name: 'NumAcc1', data: [10000001, 10000003, 10000002], mean: 10000002, sd: 1, digits: 15 },
  { name: 'NumAcc2', data: pairs(1.2, 1.1, 1.3), mean: 1.2, sd: 0.1, digits: 14 },
  { name: 'NumAcc3', data: pairs(1000000.2, 1000000.1, 1000000.3), mean: 1000000.2, sd: 0.1, digits: 9 },
  { name: 'NumAcc4', data: pairs(10000000.2, 10000000.1, 10000000.3), mean: 10000000.2, sd: 0.1, digits: 8 },
  { name: 'Mavro', data: mavro, mean: 2.001856, sd: 0.000429123454003053, digits: 12 },
  { name: 'Michelso', data: michelso, mean: 299.8524, sd: 0.0790105478190518, digits: 13 },
];

const correctDigits = (value: number, truth: number): number =>
  value === truth ? Infinity : -Math.log10(Math.abs(value / truth - 1));

describe.each(sets)('$name', ({ data, mean, sd, digits }) => {
  test('added at once', () => {
    const moments = new Moments().add(data);
    expect(correctDigits(moments.mean, mean)).toBeGreaterThan(15);
    expect(correctDigits(moments.sd, sd)).toBeGreaterThan(digits);
  });

  test('added one by one and merged from halves', () => {
    const single = new Moments();
    for (let i = 0; i < data.length; i++) single.add(data, i, i + 1);
    const half = data.length >> 1;
    const merged = new Moments().add(data, 0, half).merge(new Moments().add(data, half));
    for (const moments of [single, merged]) {
      expect(moments.count).toBe(data.length);
      expect(correctDigits(moments.mean, mean)).toBeGreaterThan(14);
      expect(correctDigits(moments.sd, sd)).toBeGreaterThan(Math.min(digits, 12) - 0.5);
    }
  });
});

test('the textbook formula Σx² − (Σx)²/n would fail on the same data', () => {
  const { data, sd } = sets[3]!;
  const sum = data.reduce((total, x) => total + x, 0);
  const ofSquares = data.reduce((total, x) => total + x * x, 0);
  const textbook = Math.sqrt(Math.abs(ofSquares - (sum * sum) / data.length) / (data.length - 1));
  expect(correctDigits(textbook, sd)).toBeLessThan(3);
});
