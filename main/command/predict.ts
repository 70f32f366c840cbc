/** `ringtrue predict`: what each method of the project leads to. */
import { csvText } from '../../sim/export/csv';
import { predictionJson } from '../../sim/export/prediction-json';
import { ringFigures, ringTableName } from '../../sim/export/ring-figures';
import { geometrySummary, ringGeometry } from '../../sim/geometry/ring';
import type { Project } from '../../sim/project/document';
import { problemLine } from '../../sim/project/problem';
import { warnings } from '../../sim/reading/checks';
import type { MethodPrediction, MethodResult } from '../../sim/run/prediction';
import { type TouchExcess, touchExcess } from '../../sim/run/touch-excess';
import { touchSentence } from '../../sim/wording/joints';
import { budgetTable, geometryTable, plainText, predictionTable } from '../../sim/wording/tables';
import { readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { outFile, writeOut } from './out-file';
import { Refusal } from './refusal';
import { RUN_OPTIONS, runWishes } from './run-options';
import { stoppableRun } from './stoppable-run';
import type { CommandIo } from './streams';

export async function predict(args: readonly string[], io: CommandIo, workerProgram: URL): Promise<void> {
  const given = readArguments(
    'predict',
    args,
    { ...RUN_OPTIONS, 'touch-excess': 'flag', rings: 'value', force: 'flag' },
    1,
  );
  const wishes = runWishes(given);
  const rings = outFile(given, 'rings', ['csv']);
  const project = wishes.override(await openProject('predict', given.operands, io));
  const methods = wishes.methodsOf(project);
  if (rings !== null && methods.length > 1) {
    throw new Refusal(['Option --rings writes the rings of one method. Name it with --method.']);
  }
  const run = stoppableRun(project, methods, wishes, io, workerProgram);
  const predictions: MethodPrediction[] = [];
  const texts: string[] = [];
  for await (const result of run.results()) {
    predictions.push(given.flags.includes('touch-excess') ? withTouchExcess(result, project) : result.prediction);
    if (rings !== null) await writeOut(rings, ringsCsv(result, project));
    if (!wishes.json) texts.push(...methodTexts(result, project));
  }
  if (wishes.json) io.stdout.write(predictionJson(project, predictions));
  else io.stdout.write(fitForTerminal(`${[...headTexts(project), ...texts].join('\n\n')}\n`));
  run.end();
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

function excessOf({ prediction }: MethodResult, project: Project): TouchExcess | null {
  return touchExcess(
    project,
    project.methods.findIndex(({ name }) => name === prediction.name),
  );
}

function withTouchExcess(result: MethodResult, project: Project): MethodPrediction {
  const { cost, ...before } = result.prediction;
  const excess = excessOf(result, project);
  const told = excess && { trials: excess.trials, meanMm: excess.meanMm, p95Mm: excess.p95Mm };
  return { ...before, touchExcess: told, cost };
}

function methodTexts(result: MethodResult, project: Project): string[] {
  const { display } = project;
  const budget = budgetTable(result, display);
  const table = plainText(predictionTable(result, display));
  return [
    `${table}\n${touchSentence(excessOf(result, project), display)}`,
    ...(budget === null ? [] : [plainText(budget)]),
  ];
}
