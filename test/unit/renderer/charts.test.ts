import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gapScale, snapped } from '../../../renderer/charts/gap-scale';
import { spreadLabels } from '../../../renderer/charts/spread-labels';
import { dotSize, levelPx, packDots, stackDots } from '../../../renderer/charts/stack-dots';
import { steadyScale } from '../../../renderer/pages/verdict/use-steady-scale';

const millimetres = fc.double({ min: 0, max: 10, noNaN: true });

test('the scale of gaps holds the limit, begins at 0 and ends at a tick', () => {
  fc.assert(
    fc.property(millimetres, millimetres, fc.constantFrom('metric', 'inch'), (wanted, limit, display) => {
      const { maxMm, ticksMm } = gapScale(wanted, limit, display);
      expect(maxMm).toBeGreaterThanOrEqual(limit - 1e-9);
      expect(ticksMm[0]).toBe(0);
      expect(ticksMm.at(-1)).toBeCloseTo(maxMm, 9);
      expect(ticksMm.length).toBeGreaterThanOrEqual(4);
      expect(ticksMm.length).toBeLessThanOrEqual(8);
    }),
  );
});

test('gaps that no longer count as closed do not stretch the scale', () => {
  expect(gapScale(50, 0.15, 'metric').maxMm).toBeLessThanOrEqual(2.5);
});

test('the handle lands on hundredths of a millimetre, written without the dust of binary fractions', () => {
  const scale = gapScale(0.4, 0.15, 'metric');
  expect(snapped(0.1449, scale)).toBe(0.14);
  expect(snapped(0.29, scale)).toBe(0.29);
  expect(snapped(-1, scale)).toBe(0);
  expect(snapped(99, scale)).toBe(scale.maxMm);
});

test('the scale stays while the limit moves on it, and gives way when the limit leaves it or the unit changes', () => {
  const scale = gapScale(0.4, 0.15, 'metric');
  const kept = { scale, limitMm: 0.15 };
  expect(steadyScale(kept, gapScale(0.1, 0.05, 'metric'), 0.05, false)).toBe(kept);
  expect(steadyScale(kept, gapScale(0.8, 0.4, 'metric'), scale.maxMm, false)).toBe(kept);
  const longer = gapScale(1, 0.9, 'metric');
  expect(steadyScale(kept, longer, 0.9, false).scale).toBe(longer);
  const inches = gapScale(0.4, 0.15, 'inch');
  expect(steadyScale(kept, inches, 0.15, true).scale).toBe(inches);
});

test('the scale of a first key gives way once the limit is typed to its end, and results that refine move nothing', () => {
  const kept = { scale: gapScale(0.33, 0.15, 'metric'), limitMm: 0.15 };
  // "1/64" typed for the limit: its first key is 1 mm, the whole of it 0.0156 mm.
  const atKey = steadyScale(kept, gapScale(2.2, 1, 'metric'), 1, false);
  expect(atKey.scale.maxMm).toBeGreaterThan(1);
  const whole = gapScale(0.1, 1 / 64, 'metric');
  expect(steadyScale(atKey, whole, 1 / 64, false)).toBe(atKey);
  const settled = steadyScale(atKey, whole, 1 / 64, true);
  expect(settled).toEqual({ scale: whole, limitMm: 1 / 64 });
  expect(steadyScale(settled, gapScale(0.05, 1 / 64, 'metric'), 1 / 64, true)).toBe(settled);
});

test('a column of all fifty dots stays in its plot', () => {
  const gapsMm = Array.from({ length: 50 }, () => 0.001);
  const room = { widthPx: 300, heightPx: 96, besidePx: 50, mostPx: 13 };
  const dotPx = dotSize([gapsMm], 0, 2, room);
  const dots = stackDots(gapsMm, 2, room.widthPx, dotPx);
  const apartPx = levelPx(dots, dotPx, room.heightPx);
  expect(dotPx + apartPx * Math.max(...dots.map(({ level }) => level))).toBeLessThanOrEqual(room.heightPx);
  // Dots that have room stand a whole dot apart.
  expect(levelPx(dots.slice(0, 3), 10, room.heightPx)).toBe(10);
});

test('labels keep their order, their distance and their bounds', () => {
  const places = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(places, (wanted) => {
      const placed = spreadLabels(wanted, 40, 0, 300);
      const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
      order.forEach((label, i) => {
        const at = placed[label] ?? Number.NaN;
        expect(at).toBeGreaterThanOrEqual(-1e-9);
        expect(at).toBeLessThanOrEqual(300 + 1e-9);
        const before = order[i - 1];
        if (before !== undefined) expect(at - (placed[before] ?? 0)).toBeGreaterThanOrEqual(40 - 1e-9);
      });
    }),
  );
});

test('labels that stand far enough apart stay where they want to be', () => {
  expect(spreadLabels([10, 200, 100], 40, 0, 300)).toEqual([10, 200, 100]);
});

const gaps = fc
  .array(fc.double({ min: 0, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 50 })
  .map((values) => values.sort((a, b) => a - b));

test('no dot is lost, and no two stand on the same place', () => {
  fc.assert(
    fc.property(gaps, (values) => {
      const dots = stackDots(values, 0.4, 600, 12);
      expect(dots.map(({ valueMm }) => valueMm)).toEqual(values);
      expect(new Set(dots.map(({ x, level }) => `${x} ${level}`)).size).toBe(values.length);
    }),
  );
});

test('a dot stands within one dot of its value', () => {
  fc.assert(
    fc.property(gaps, (values) => {
      for (const { x, valueMm } of stackDots(values, 0.4, 600, 12)) {
        expect(Math.abs(x - (valueMm / 0.4) * 600)).toBeLessThanOrEqual(12);
      }
    }),
  );
});

test('with the size chosen, the highest column and the dots beside the scale fit', () => {
  const room = { widthPx: 600, heightPx: 96, besidePx: 52, mostPx: 13 };
  fc.assert(
    fc.property(gaps, fc.integer({ min: 0, max: 50 }), (values, packed) => {
      const dotPx = dotSize([values], packed, 0.4, room);
      if (dotPx <= 4) return;
      const highest = Math.max(...stackDots(values, 0.4, 600, dotPx).map(({ level }) => level + 1));
      expect(highest * dotPx).toBeLessThanOrEqual(96);
      const levels = Math.floor(96 / dotPx);
      const columns = new Set(
        packDots(
          Array.from({ length: packed }, () => 0),
          levels,
        ).map(({ x }) => x),
      ).size;
      expect(columns * dotPx).toBeLessThanOrEqual(52);
    }),
  );
});
