import { describe, expect, test } from 'vitest';
import { Generator, splitmix64 } from '../../sim/random/xoshiro';
import { edge, height, LAYER_AREA, LAYERS } from '../../sim/random/ziggurat';

describe('published outputs of the generators', () => {
  // published: the reference values quoted with S. Vigna's splitmix64.c in several libraries' tests
  test('splitmix64 from 1234567', () => {
    const next = splitmix64(1234567n);
    expect([next(), next(), next(), next(), next()]).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  // published: D. Blackman and S. Vigna's xoshiro128starstar.c 1.1, as quoted in several libraries' tests
  test('xoshiro128** 1.1 from the state 1, 2, 3, 4', () => {
    const generator = new Generator([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, () => generator.nextUint32())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });
});

describe('the ziggurat of 256 layers', () => {
  // published: Marsaglia and Tsang (2000), v for 256 layers, twelve digits of which the last two are rounding
  test('has the published layer area', () => {
    expect(LAYER_AREA).toBeCloseTo(0.00492867323399, 13);
  });

  test('has layers of equal area up to the very top', () => {
    for (let layer = 1; layer < LAYERS; layer++) {
      const area = edge[layer]! * (height[layer + 1]! - height[layer]!);
      expect(Math.abs(area / LAYER_AREA - 1)).toBeLessThan(2e-12);
    }
    expect(height[LAYERS]).toBe(1);
  });
});
