/** Everything about one method that does not change from ring to ring. Built anew by every worker from the document. */

import { type RingCloser, ringCloser } from '../closure/ring-closer';
import { type RingMaps, ringMaps } from '../closure/ring-maps';
import type { Cut } from '../errors/cuts';
import type { DrawList, Effects } from '../errors/draw-list';
import { anglesOf, both, onTilt } from '../errors/face-index';
import { drawList, methodCuts } from '../errors/sources';
import { RADIANS_PER_DEGREE, type RingGeometry, ringGeometry } from '../geometry/ring';
import type { Method, Project, Rule, SourceName } from '../project/document';
import type { TestPlan } from '../testing/test-cuts';
import {
  aimReading,
  LEAST_SENSITIVITY_MM_PER_DEG,
  readingRow,
  type TestSetting,
  testSetting,
} from '../testing/test-reading';
import { type OutputMatrix, outputMatrix, outputsOf, readingMatrix } from './output-matrix';
import { collapsedStage, type Engine, plainStage, type Stage } from './stages';

export interface PlanOptions {
  rule?: Rule;
  engine?: Engine;
  /** Follow the clear openings; on unless told otherwise, and always where an insert must fit. */
  sizes?: boolean;
  /** Sources that count as perfect. */
  perfect?: ReadonlySet<SourceName>;
}

export interface MethodPlan {
  project: Project;
  method: Method;
  engine: Engine;
  geometry: RingGeometry;
  maps: RingMaps;
  cuts: Cut[];
  list: DrawList;
  closer: RingCloser;
  matrix: OutputMatrix;
  sizes: boolean;
  /** Draws made once per set-up, and anew for every piece; `whole` is the two in one, for runs without test cuts. */
  shared: Stage;
  perPiece: Stage;
  whole: Stage;
  test?: TestPlan;
}

export function methodPlan(project: Project, methodIndex: number, options: PlanOptions = {}): MethodPlan {
  const method = project.methods[methodIndex];
  if (!method)
    throw new RangeError(`Method ${methodIndex} is not one of the ${project.methods.length} in the project.`);
  const { engine = 'collapsed' } = options;
  // Whether an insert fits decides the grade, so then sizes are always followed.
  const sizes = options.sizes !== false || project.piece.insert !== undefined;
  const geometry = ringGeometry(project.piece);
  const maps = ringMaps(geometry);
  const cuts = methodCuts(project, method, geometry);
  const list = drawList(project, method, geometry, cuts, options.perfect);
  const closer = ringCloser(maps, method.assembly, options.rule ?? project.run.rule);
  const row = readingRow(maps, method.test, project.piece.showFace);
  const setting = row && testSetting(row);
  const tests = setting !== undefined && Math.abs(setting.mmPerDeg) >= LEAST_SENSITIVITY_MM_PER_DEG;
  const matrix = outputMatrix(maps, closer.give, {
    sizes,
    halfTurn: method.assembly.by === 'twoHalves',
    ...(tests && { readingRow: row! }),
  });
  const stage = engine === 'plain' ? plainStage : collapsedStage;
  return {
    project,
    method,
    engine,
    geometry,
    maps,
    cuts,
    list,
    closer,
    matrix,
    sizes,
    shared: stage(list, matrix, ['shared']),
    perPiece: stage(list, matrix, ['perCut']),
    whole: stage(list, matrix, ['shared', 'perCut']),
    ...(tests && {
      test: {
        ...setting,
        ownErrors: stage(list, readingMatrix(row!), ['perCut']),
        perDegree: outputsOf(matrix, dialled(cuts, geometry.sides, setting.setting)),
        aimReadingMm: aimReading(list, row!),
      },
    }),
  };
}

/** One degree on the tilt of every cut, or on the swing of every cut. */
function dialled(cuts: readonly Cut[], sides: number, setting: TestSetting['setting']): Effects {
  return setting === 'tilt'
    ? both(anglesOf(cuts, 'bevel', RADIANS_PER_DEGREE), onTilt(sides, RADIANS_PER_DEGREE))
    : anglesOf(cuts, 'crosscut', RADIANS_PER_DEGREE);
}
