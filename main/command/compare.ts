/** `ringtrue compare`: the methods side by side, and which to use. */
import { aheadChance } from '../../sim/decide/chance-ahead';
import { bestChances, methodDifferences } from '../../sim/decide/differences';
import { predictionOf } from '../../sim/export/prediction-json';
import type { Project } from '../../sim/project/document';
import type { MethodResult } from '../../sim/run/prediction';
import { type ComparedMethod, differenceTable } from '../../sim/wording/differences';
import { methodTable, plainText } from '../../sim/wording/tables';
import {
  type AheadPair,
  aheadSentence,
  mostlyCloses,
  type Recommendation,
  rankedByMerit,
  recommendation,
} from '../../sim/wording/verdict';
import { readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { headTexts } from './predict';
import { RUN_OPTIONS, runWishes } from './run-options';
import { stoppableRun } from './stoppable-run';
import type { CommandIo } from './streams';

export async function compare(args: readonly string[], io: CommandIo, workerProgram: URL): Promise<void> {
  const given = readArguments('compare', args, RUN_OPTIONS, 1);
  const wishes = runWishes(given);
  const project = wishes.override(await openProject('compare', given.operands, io));
  const methods = wishes.methodsOf(project);
  const run = stoppableRun(project, methods, wishes, io, workerProgram);
  const results: MethodResult[] = [];
  for await (const result of run.results()) results.push(result);
  const pairs = pairsOf(results);
  const verdict = recommendation(project, results, pairs);
  const compared = comparedMethods(results);
  const text = wishes.json
    ? comparisonJson(project, results, pairs, compared, verdict)
    : comparisonText(project, results, pairs, compared, verdict);
  io.stdout.write(text);
  run.end();
}

interface Compared {
  /** The method the others are held against; none where there are no others. */
  against: MethodResult | undefined;
  methods: ComparedMethod[];
}

function comparedMethods(results: readonly MethodResult[]): Compared {
  const against = results.length > 1 ? rankedByMerit(results)[0] : undefined;
  const chances = bestChances(results);
  return {
    against,
    methods: results.map((result, k) => {
      const differences =
        against === undefined || against === result ? {} : { differences: methodDifferences(result, against) };
      return { result, bestChance: chances[k]!, ...differences };
    }),
  };
}

function comparisonJson(
  project: Project,
  results: readonly MethodResult[],
  pairs: readonly AheadPair[],
  compared: Compared,
  verdict: Recommendation,
): string {
  const predictions = results.map((result) => result.prediction);
  const comparison = {
    ...predictionOf(project, predictions),
    format: 'ringtrue-comparison',
    pairs,
    ...comparedJson(compared),
    recommendation: verdict,
  };
  return `${JSON.stringify(comparison, null, 2)}\n`;
}

function comparisonText(
  project: Project,
  results: readonly MethodResult[],
  pairs: readonly AheadPair[],
  { against, methods }: Compared,
  verdict: Recommendation,
): string {
  const texts = [...headTexts(project), plainText(methodTable(results, project.display))];
  const closing = new Set(results.filter(mostlyCloses).map(({ prediction }) => prediction.name));
  const told = pairs.filter(({ first, second }) => closing.has(first) && closing.has(second));
  if (told.length > 0) texts.push(told.map(aheadSentence).join('\n'));
  if (against !== undefined) {
    texts.push(plainText(differenceTable(against.prediction.name, methods, project.display)));
  }
  texts.push([verdict.headline, ...verdict.because].join('\n'));
  return fitForTerminal(`${texts.join('\n\n')}\n`);
}

function comparedJson({ against, methods }: Compared): object {
  return {
    bestChances: methods.map(({ result, bestChance }) => ({ name: result.prediction.name, bestChance })),
    differences: methods.flatMap(({ result, differences }) => {
      if (differences === undefined || against === undefined) return [];
      const { cost, ...others } = differences;
      const names = { name: result.prediction.name, against: against.prediction.name };
      return [{ ...names, ...others, costPerGoodPiece: cost }];
    }),
  };
}

/** Every two methods, the earlier in the file first. */
function pairsOf(results: readonly MethodResult[]): AheadPair[] {
  return results.flatMap((a, index) =>
    results.slice(index + 1).map((b) => {
      return { first: a.prediction.name, second: b.prediction.name, firstAhead: aheadChance(a.sample, b.sample) };
    }),
  );
}
