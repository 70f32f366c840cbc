/** The saw's setting in a sentence. */
import { expect, test } from 'vitest';
import { settingSentence } from '../../../sim/wording/setting';
import { projectWith } from '../../support/projects';

const size = { by: 'outsideFlats', mm: 280 } as const;

// Width: 280·tan(180°/N), to a tenth. Upright: tilt 180°/N; sloped: sin B = cos s · sin(180°/N), tan M = sin s · tan(180°/N), the handbook formulas of the trade.
test.each([
  [{ sides: 12, slopeDeg: 0 }, 'Tilt the blade 15° and cut 12 staves 75.0 mm wide.'],
  [{ sides: 8, slopeDeg: 30 }, 'Tilt the blade 19.35°, swing the gauge 11.7° and cut 8 staves 116.0 mm wide.'],
  [{ sides: 6, slopeDeg: 90 }, 'Leave the blade square, swing the gauge 30° and cut 6 staves 161.7 mm wide.'],
])('%o', (piece, sentence) => {
  expect(settingSentence(projectWith({ piece: { ...piece, size } }))).toBe(sentence);
});

test('in degrees and minutes, and in inches', () => {
  const project = projectWith({ piece: { sides: 16, slopeDeg: 0, size } });
  expect(settingSentence({ ...project, display: 'inch' }, 'minutes')).toMatch(
    /^Tilt the blade 11°15′ and cut 16 staves 2\.19\d* in wide\.$/,
  );
});
