/** The machine-readable prediction, the same from the command line and from the pages. */
import { geometrySummary, ringGeometry } from '../geometry/ring';
import type { Project } from '../project/document';
import type { MethodPrediction, Prediction } from '../run/prediction';

export function predictionOf(project: Project, methods: MethodPrediction[]): Prediction {
  return {
    format: 'ringtrue-prediction',
    version: 1,
    title: project.title,
    seed: project.run.seed,
    geometry: geometrySummary(ringGeometry(project.piece)),
    methods,
  };
}

/** One JSON object, its keys in the order of `Prediction`, with a line end after it. */
export function predictionJson(project: Project, methods: MethodPrediction[]): string {
  return `${JSON.stringify(predictionOf(project, methods), null, 2)}\n`;
}
