/** Whether the test piece of a method tells enough about the setting it is meant to correct. */
import { ringMaps } from '../closure/ring-maps';
import type { RingGeometry } from '../geometry/ring';
import type { Method, Piece } from '../project/document';
import type { Problem } from '../project/problem';
import { LEAST_SENSITIVITY_MM_PER_DEG, readingRow, testSetting } from '../testing/test-reading';

/** @param path of the method, e.g. `methods[0]`; the piece and the kind of test must fit each other already */
export function testPieceProblems(piece: Piece, method: Method, geometry: RingGeometry, path: string): Problem[] {
  const { test } = method;
  if (test.kind === 'none' || test.maxRounds === 0) return [];
  const row = readingRow(ringMaps(geometry), test, piece.showFace);
  if (row === undefined) return [];
  const { setting, mmPerDeg } = testSetting(row);
  const seen = Math.abs(mmPerDeg);
  if (seen >= LEAST_SENSITIVITY_MM_PER_DEG) return [];
  const where = test.kind === 'pair' ? 'armMm' : 'kind';
  const remedy =
    test.kind === 'pair' ? 'Give a longer arm, another test piece or none.' : 'Give another test piece or none.';
  return [
    {
      path: `${path}.test.${where}`,
      sentence:
        `Test piece ${test.kind} moves ${seen.toFixed(2)} mm for each degree of the ${setting}, ` +
        `below the ${LEAST_SENSITIVITY_MM_PER_DEG} mm that can be read. ${remedy}`,
    },
  ];
}
