import { describe, expect, test } from 'vitest';
import { fillNormals } from '../../../sim/random/normal';
import { stream } from '../../../sim/random/streams';
import { Generator, seededGenerator } from '../../../sim/random/xoshiro';
import { correlation } from './correlation';

const firstWords = (seed: number, name: string, block: number): number[] => {
  const generator = stream(seed, name, block);
  return Array.from({ length: 4 }, () => generator.nextUint32());
};

describe('streams', () => {
  test('the same triple gives the same numbers', () => {
    expect(firstWords(7, 'tilt', 3)).toEqual(firstWords(7, 'tilt', 3));
  });

  // derived: FNV-1a, splitmix64 and xoshiro128** written independently in another language
  test('the numbers are the ones the rule says, so old results can be had again', () => {
    expect(firstWords(7, 'tilt', 3)).toEqual([2959628307, 3095705290, 2421166078, 2895024409]);
    expect(firstWords(0, '', 0)).toEqual([316025661, 126273506, 882989774, 4001937687]);
    expect(firstWords(4294967295, 'Länge', 2 ** 40)).toEqual([3252365907, 3947307288, 1713588910, 4234718101]);
  });

  test('thousands of neighbouring triples all start differently', () => {
    const seen = new Set<string>();
    let triples = 0;
    for (const seed of [0, 1, 2, 2 ** 31, 2 ** 32 - 1]) {
      for (const name of ['', 'a', 'b', 'ab', 'ba', 'tilt', 'tilt2', 'length']) {
        for (let block = 0; block < 50; block++, triples++) seen.add(firstWords(seed, name, block).join());
      }
    }
    expect(seen.size).toBe(triples);
  });

  test('neighbouring triples are not correlated', () => {
    const n = 100_000;
    const numbers = (seed: number, name: string, block: number): Float64Array => {
      const out = new Float64Array(n);
      fillNormals(stream(seed, name, block), out);
      return out;
    };
    const base = numbers(0, 'tilt', 0);
    // Four standard errors: one false alarm in 16,000.
    for (const other of [numbers(1, 'tilt', 0), numbers(0, 'tilu', 0), numbers(0, 'tilt', 1), numbers(0, '', 0)]) {
      expect(Math.abs(correlation(base, other))).toBeLessThan(4 / Math.sqrt(n));
    }
    expect(correlation(base, numbers(0, 'tilt', 0))).toBeCloseTo(1, 12);
  });

  test('seed 0 is a seed', () => {
    const words = firstWords(0, 'tilt', 0);
    expect(new Set(words).size).toBe(4);
    expect(words).not.toEqual(firstWords(1, 'tilt', 0));
  });

  test.each([-1, 2 ** 32, 0.5, Number.NaN])('seed %d is refused with a sentence', (seed) => {
    expect(() => stream(seed, 'tilt', 0)).toThrow(`Seed ${seed} is not a whole number from 0 to 4294967295.`);
  });

  test.each([-1, 1.5, Infinity])('block %d is refused with a sentence', (block) => {
    expect(() => stream(1, 'tilt', block)).toThrow(`Block ${block} of stream "tilt" is not a whole number`);
  });
});

describe('generator', () => {
  test('refuses the state that never moves', () => {
    expect(() => new Generator([0, 0, 0, 0])).toThrow('Generator state 0, 0, 0, 0 cannot be used.');
    expect(() => new Generator([0, 2 ** 32, 0, 0])).toThrow(RangeError);
    expect(() => new Generator([1, 2, 3])).toThrow(RangeError);
  });

  test('a seed of 0 does not give a state of zeros', () => {
    expect([...seededGenerator(0n).state].some((word) => word !== 0)).toBe(true);
  });

  test('uniform numbers lie strictly between 0 and 1, and so do the extremes of their formula', () => {
    const generator = stream(5, 'uniform', 0);
    const numbers = Array.from({ length: 100_000 }, () => generator.uniform());
    expect(numbers.every((u) => u > 0 && u < 1)).toBe(true);
    expect((0x3ff_ffff * 0x400_0000 + 0x3ff_ffff + 0.5) * 2 ** -52).toBeLessThan(1);
  });
});
