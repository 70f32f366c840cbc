/** The stiffness of a saw blade against plate theory and a measured blade. */
import { describe, expect, test } from 'vitest';
import { bladeStiffness } from '../../sim/errors/blade';
import { idealStiffness, plateAlpha, plateBeta, REAL_BLADE_FACTOR } from '../../sim/errors/blade-stiffness';
import { DEFAULT_BLADE } from '../../sim/project/defaults';

// derived: annular Kirchhoff plate clamped at the collar, point load at the rim, ν = 0.3; confirmed by an energy solution
const PLATE: [ratio: number, alpha: number, beta: number][] = [
  [0.1, 0.3599, 1.512],
  [0.2, 0.5111, 1.558],
  [0.25, 0.6068, 1.574],
  [0.3, 0.7242, 1.589],
  [0.35, 0.871, 1.602],
  [0.4, 1.0583, 1.615],
  [0.5, 1.6276, 1.639],
];

describe('a clamped annular plate', () => {
  test.each(PLATE)(
    'with its collar at %f of the rim has the stiffness and the slope of the table',
    (ratio, alpha, beta) => {
      expect(plateAlpha(ratio)).toBeCloseTo(alpha, 10);
      expect(plateBeta(ratio)).toBeCloseTo(beta, 10);
    },
  );

  test('is stiffer and bends more sharply the larger its collar, without a step between the points of the table', () => {
    for (let ratio = 0.1; ratio < 0.499; ratio += 0.001) {
      const rise = plateAlpha(ratio + 0.001) / plateAlpha(ratio);
      expect(rise).toBeGreaterThan(1.001);
      expect(rise).toBeLessThan(1.007);
      expect(plateBeta(ratio + 0.001)).toBeGreaterThan(plateBeta(ratio));
    }
  });

  // a clamped cantilever's end slopes by 1.5 deflections a length (published: any text on beams)
  test('slopes a little more at the load than a cantilever', () => {
    expect(plateBeta(0.1)).toBeGreaterThan(1.5);
    expect(plateBeta(0.5)).toBeLessThan(1.65);
  });
});

describe('a saw blade', () => {
  // derived: k = α·E·h³/a², E = 210 000 N/mm²
  test.each([
    [254, 2.2, 75, 98.7],
    [254, 1.8, 60, 43.9],
    [184, 1.2, 40, 23.3],
    [305, 2.4, 80, 79.1],
  ])(
    'of %f mm, %f thick, with a collar of %f, would have %f N/mm as an ideal disc',
    (diameter, plate, collar, stiffness) => {
      expect(Math.abs(idealStiffness(diameter, plate, collar) - stiffness)).toBeLessThan(0.06);
    },
  );

  // published: Merhar et al., BioResources 12(3), 2017, 5569–5582: 60 N/mm measured where 81 was calculated
  test('really has as much less as a measured one had', () => {
    expect(REAL_BLADE_FACTOR).toBeCloseTo(60 / 81, 2);
    const blade = { ...DEFAULT_BLADE, diameterMm: 254, plateMm: 2.2, collarMm: 75 };
    expect(bladeStiffness(blade) / idealStiffness(254, 2.2, 75)).toBeCloseTo(60 / 81, 2);
  });

  test('has the stiffness that is given, where one is', () => {
    expect(bladeStiffness({ ...DEFAULT_BLADE, stiffnessNPerMm: 55 })).toBe(55);
  });

  test('twice as thick is eight times as stiff, and twice as wide a quarter', () => {
    expect(idealStiffness(250, 3, 70) / idealStiffness(250, 1.5, 70)).toBeCloseTo(8, 9);
    expect(idealStiffness(500, 2, 140) / idealStiffness(250, 2, 70)).toBeCloseTo(0.25, 9);
  });
});
