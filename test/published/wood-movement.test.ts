/** Moisture and movement of wood against the tables of the handbook and figures worked out beside the program. */
import { describe, expect, test } from 'vitest';
import { seasonChange, staveShrinkage } from '../../sim/season/bevel-change';
import { equilibriumMoisturePercent } from '../../sim/season/moisture';
import { perPointFromShrinkage, type SolidMovement, woodNamed } from '../../sim/season/woods';
import { geometryOf } from '../support/rings';

const solidWood = (name: string): { movement: SolidMovement; radialPercent: number; tangentialPercent: number } => {
  const wood = woodNamed(name);
  if (wood?.movement.kind !== 'solid' || wood.shrinkage === undefined) throw new Error(`${name} is not in the table.`);
  return { movement: wood.movement, ...wood.shrinkage };
};

describe('equilibrium moisture', () => {
  // published: Wood Handbook, table 4–2, the row of 21.1 °C (70 °F), one decimal; from memory
  test.each([
    [10, 2.5],
    [20, 4.5],
    [30, 6.2],
    [40, 7.7],
    [50, 9.2],
    [60, 11.0],
    [70, 13.1],
    [80, 16.0],
    [90, 20.5],
  ])('at 21.1 °C and %i %% is %f %% within a tenth', (humidity, printed) => {
    expect(Math.abs(equilibriumMoisturePercent(21.1, humidity) - printed)).toBeLessThan(0.1);
  });

  // derived: Wood Handbook, equation 4–5, worked out in another language
  test.each([
    [10, 2.482],
    [20, 4.492],
    [30, 6.17],
    [40, 7.699],
    [50, 9.243],
    [60, 10.965],
    [70, 13.088],
    [80, 15.99],
    [90, 20.48],
  ])('at 21.1 °C and %i %% is %f %%, to the last digit', (humidity, derived) => {
    expect(Math.abs(equilibriumMoisturePercent(21.1, humidity) - derived)).toBeLessThan(6e-4);
  });

  // derived: the same; 5.03 points between a heated winter room and a damp summer at 20 °C
  test('gains 5.03 points between 35 % and 65 % at 20 °C', () => {
    expect(equilibriumMoisturePercent(20, 65) - equilibriumMoisturePercent(20, 35)).toBeCloseTo(5.033, 3);
  });
});

describe('shrinkage, percent green to ovendry, radial and tangential', () => {
  // published: Wood Handbook, table 4–3; sugar maple and eastern white pine from memory
  test.each([
    ['white oak', 5.6, 10.5],
    ['black walnut', 5.5, 7.8],
    ['sugar maple', 4.8, 9.9],
    ['black cherry', 3.7, 7.1],
    ['white ash', 4.9, 7.8],
    ['yellow birch', 7.3, 9.5],
    ['american beech', 5.5, 11.9],
    ['yellow-poplar', 4.6, 8.2],
    ['eastern white pine', 2.1, 6.1],
  ])('of %s are %f and %f', (name, radial, tangential) => {
    expect(solidWood(name)).toMatchObject({ radialPercent: radial, tangentialPercent: tangential });
  });
});

describe('movement per point of moisture, radial and tangential', () => {
  // published: Wood Handbook, table 13–5
  const coefficients: [name: string, radial: number, tangential: number][] = [
    ['black walnut', 0.0019, 0.00274],
    ['black cherry', 0.00126, 0.00248],
    ['white ash', 0.00169, 0.00274],
    ['yellow birch', 0.00256, 0.00338],
    ['american beech', 0.0019, 0.00431],
    ['sugar maple', 0.00165, 0.00353],
    ['white oak', 0.0018, 0.00365],
  ];
  test.each(coefficients)('of %s are %f and %f', (name, radial, tangential) => {
    expect(solidWood(name).movement).toEqual({ kind: 'solid', radialPerPoint: radial, tangentialPerPoint: tangential });
  });

  test.each(coefficients.filter(([name]) => name !== 'white oak'))(
    'of %s follow from its shrinkage to the last printed digit',
    (name, radial, tangential) => {
      const { radialPercent, tangentialPercent } = solidWood(name);
      expect(Math.abs(perPointFromShrinkage(radialPercent) - radial)).toBeLessThan(5.1e-6);
      expect(Math.abs(perPointFromShrinkage(tangentialPercent) - tangential)).toBeLessThan(5.1e-6);
    },
  );

  test('of white oak do not, because the handbook pools several oaks there', () => {
    expect(Math.abs(perPointFromShrinkage(5.6) - 0.0018)).toBeGreaterThan(1e-4);
  });
});

describe('mitres of white oak that loses four points', () => {
  const { movement } = solidWood('white oak');
  const upright = (sides: number) =>
    geometryOf({ sides, slopeDeg: 0, midWidthMm: 100, heightMm: 120, thicknessMm: 18 });

  // derived: tan B′ = tan B · (1 − ε_w)/(1 − ε_t) with the coefficients of table 13–5, by hand
  test.each([
    ['upStave', 'flatsawn', 8, 22.3488, -2.418],
    ['upStave', 'flatsawn', 12, 14.8932, -2.564],
    ['alongRing', 'flatsawn', 8, 22.6468, 2.348],
    ['alongRing', 'quartersawn', 8, 22.7995, 4.792],
  ] as const)('grain %s, %s, %i sides: bevel %f°, ring sum %f°', (grain, sawing, sides, bevel, sum) => {
    const change = seasonChange(upright(sides), staveShrinkage(movement, grain, sawing, -4));
    expect(change.bevelAfterDeg).toBeCloseTo(bevel, 4);
    expect(change.ringSumDeg).toBeCloseTo(sum, 3);
    expect(change.ringSumDeg).toBeCloseTo(2 * sides * (change.bevelAfterDeg - change.bevelDeg), 9);
    // Short of 360° opens the outside, over it the inside.
    expect(Math.sign(change.jointOpeningMm)).toBe(-Math.sign(sum));
  });

  test('a flatsawn frame 75 mm wide opens by 1.56 mm at the inner corners', () => {
    const frame = geometryOf({ sides: 4, slopeDeg: 90, midWidthMm: 300, heightMm: 75, thicknessMm: 20 });
    const change = seasonChange(frame, staveShrinkage(movement, 'alongRing', 'flatsawn', -4));
    expect(change.crosscutAfterDeg).toBeCloseTo(45.4213, 4);
    expect(change.jointOpeningMm).toBeCloseTo(-1.56, 3);
    expect(change.bevelAfterDeg).toBe(0);
  });
});
