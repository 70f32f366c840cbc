import { expect, test } from 'vitest';
import { finerTicks, gapScale } from '../../../renderer/charts/gap-scale';
import { paintOf } from '../../../renderer/exports/svg-attributes';

// CSS Color Module Level 4, section 15.2: computed colours are serialised as rgb() or rgba(); SVG 1.1 knows #rrggbb.
test.each([
  ['rgb(31, 128, 238)', '#1f80ee', 1],
  ['rgba(0, 0, 0, 0)', '#000000', 0],
  ['rgba(179, 38, 30, 0.5)', '#b3261e', 0.5],
  ['none', 'none', 0],
  ['url("#hatch")', 'url("#hatch")', 1],
])('the computed colour %s is written %s and covers %d', (computed, colour, opacity) => {
  expect(paintOf(computed)).toEqual({ colour, opacity });
});

test.each(['metric', 'inch'] as const)('a curve is told at every tick of its scale and between them, %s', (display) => {
  const scale = gapScale(0.33, 0.15, display);
  const points = finerTicks(scale);
  expect(points).toHaveLength(10 * (scale.ticksMm.length - 1) + 1);
  for (const [k, tick] of scale.ticksMm.entries()) expect(points[10 * k]).toBeCloseTo(tick, 10);
});
