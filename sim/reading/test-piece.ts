/** Whether the test piece of a method tells enough about the setting it is meant to correct. */
import { ringMaps } from '../closure/ring-maps';
import type { RingGeometry } from '../geometry/ring';
import { TEST_KIND_NAMES } from '../project/choice-words';
import type { Method, Piece, Project } from '../project/document';
import { type Problem, reckonedLength, safeText } from '../project/problem';
import { LEAST_SENSITIVITY_MM_PER_DEG, readingRow, testSetting } from '../testing/test-reading';

/** @param path of the method, e.g. `methods[0]`; the piece and the kind of test must fit each other already */
export function testPieceProblems(
  piece: Piece,
  method: Method,
  geometry: RingGeometry,
  path: string,
  display: Project['display'],
): Problem[] {
  const { test } = method;
  if (test.kind === 'none' || test.maxRounds === 0) return [];
  const row = readingRow(ringMaps(geometry), test, piece.showFace);
  if (row === undefined) return [];
  const { setting, mmPerDeg } = testSetting(row);
  const seen = Math.abs(mmPerDeg);
  if (seen >= LEAST_SENSITIVITY_MM_PER_DEG) return [];
  const where = test.kind === 'pair' ? 'armMm' : 'kind';
  const remedy =
    test.kind === 'pair' ? 'Give a longer arm, another test piece or none.' : 'Choose another test piece or none.';
  const least = reckonedLength(LEAST_SENSITIVITY_MM_PER_DEG, display, 'up');
  return [
    {
      path: `${path}.test.${where}`,
      sentence:
        `The test piece of “${safeText(method.name)}”, ${TEST_KIND_NAMES[test.kind]}, moves ` +
        `${reckonedLength(seen, display, 'down')} for each degree of the ${setting}, below the ${least} that can be ` +
        `read. ${remedy}`,
    },
  ];
}
