/** `ringtrue compare`: the methods side by side, and which to use. */
import { aheadChance } from '../../sim/decide/ahead';
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import { methodTable, plainText } from '../../sim/wording/tables';
import { type AheadPair, aheadSentence, recommendation } from '../../sim/wording/verdict';
import { readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { headTexts, predictionOf } from './predict';
import { progressLine } from './progress';
import { runMethods } from './run-methods';
import { RUN_OPTIONS, runWishes } from './run-options';
import type { CommandIo } from './streams';

export async function compare(args: readonly string[], io: CommandIo, workerProgram: URL): Promise<void> {
  const given = readArguments('compare', args, RUN_OPTIONS, 1);
  const wishes = runWishes(given);
  const project = wishes.override(await openProject('compare', given.operands, io));
  const methods = wishes.methodsOf(project);
  const progress = progressLine(io.stderr, methods.length);
  const results: MethodResult[] = [];
  const way = {
    budget: wishes.budget,
    workers: wishes.workersFor(project, methods.length),
    workerProgram,
    onProgress: ({ method, ringsDone, ringsWanted }: RunProgress) => progress.show(method, ringsDone / ringsWanted),
  };
  for await (const result of runMethods(project, methods, way)) results.push(result);
  progress.clear();
  const pairs = pairsOf(results);
  const verdict = recommendation(project, results, pairs);
  if (wishes.json) {
    const predictions = results.map((result) => result.prediction);
    const comparison = {
      ...predictionOf(project, predictions),
      format: 'ringtrue-comparison',
      pairs,
      recommendation: verdict,
    };
    io.stdout.write(`${JSON.stringify(comparison, null, 2)}\n`);
    return;
  }
  const texts = [...headTexts(project), plainText(methodTable(results, project.display))];
  if (pairs.length > 0) texts.push(pairs.map(aheadSentence).join('\n'));
  texts.push([verdict.headline, ...verdict.because].join('\n'));
  io.stdout.write(fitForTerminal(`${texts.join('\n\n')}\n`));
}

/** Every two methods, the earlier in the file first. */
function pairsOf(results: readonly MethodResult[]): AheadPair[] {
  return results.flatMap((a, index) =>
    results.slice(index + 1).map((b) => {
      return { first: a.prediction.name, second: b.prediction.name, firstAhead: aheadChance(a.sample, b.sample) };
    }),
  );
}
