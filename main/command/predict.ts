/** `ringtrue predict`: what each method of the project leads to. */
import { csvText } from '../../sim/export/csv';
import { predictionJson } from '../../sim/export/prediction-json';
import { ringFigures, ringTableName } from '../../sim/export/ring-figures';
import { geometrySummary, ringGeometry } from '../../sim/geometry/ring';
import { warnings } from '../../sim/project/checks';
import type { Project } from '../../sim/project/document';
import { problemLine } from '../../sim/project/problem';
import type { MethodPrediction, MethodResult, RunProgress } from '../../sim/run/prediction';
import { touchExcess } from '../../sim/run/touch-excess';
import { touchSentence } from '../../sim/wording/joints';
import { budgetTable, geometryTable, plainText, predictionTable } from '../../sim/wording/tables';
import { readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { outFile, writeOut } from './out-file';
import { progressLine } from './progress';
import { Refusal } from './refusal';
import { runMethods } from './run-methods';
import { RUN_OPTIONS, runWishes } from './run-options';
import type { CommandIo } from './streams';

export async function predict(args: readonly string[], io: CommandIo, workerProgram: URL): Promise<void> {
  const given = readArguments('predict', args, { ...RUN_OPTIONS, rings: 'value', force: 'flag' }, 1);
  const wishes = runWishes(given);
  const rings = outFile(given, 'rings', ['csv']);
  const project = wishes.override(await openProject('predict', given.operands, io));
  const methods = wishes.methodsOf(project);
  if (rings !== null && methods.length > 1) {
    throw new Refusal(['Option --rings writes the rings of one method. Name it with --method.']);
  }
  const progress = progressLine(io.stderr, methods.length);
  const way = {
    budget: wishes.budget,
    workers: wishes.workersFor(project, methods.length),
    workerProgram,
    onProgress: ({ method, ringsDone, ringsWanted }: RunProgress) => progress.show(method, ringsDone / ringsWanted),
  };
  const predictions: MethodPrediction[] = [];
  const texts: string[] = [];
  for await (const result of runMethods(project, methods, way)) {
    predictions.push(result.prediction);
    if (rings !== null) await writeOut(rings, ringsCsv(result, project));
    if (!wishes.json) texts.push(...methodTexts(result, project, methods[predictions.length - 1]!));
  }
  progress.clear();
  if (wishes.json) io.stdout.write(predictionJson(project, predictions));
  else io.stdout.write(fitForTerminal(`${[...headTexts(project), ...texts].join('\n\n')}\n`));
}

/** Title and warnings. */
export function titleTexts(project: Project): string[] {
  const notes = warnings(project).map((warning) => `Note: ${problemLine(warning)}`);
  return [project.title, ...(notes.length > 0 ? [notes.join('\n')] : [])];
}

/** Title, warnings and the nominal ring. */
export function headTexts(project: Project): string[] {
  const ring = plainText(geometryTable(geometrySummary(ringGeometry(project.piece)), project.display));
  return [...titleTexts(project), ring];
}

function ringsCsv(result: MethodResult, { title, display, run }: Project): string {
  return csvText(ringFigures(result, display), { project: title, table: ringTableName(result), seed: run.seed });
}

function methodTexts(result: MethodResult, project: Project, method: number): string[] {
  const { display } = project;
  const budget = budgetTable(result, display);
  const excess = touchExcess(project, method);
  const table = plainText(predictionTable(result, display));
  return [
    excess === null ? table : `${table}\n${touchSentence(excess, display)}`,
    ...(budget === null ? [] : [plainText(budget)]),
  ];
}
