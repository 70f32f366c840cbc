/** The options that predict and compare share. */
import { availableParallelism } from 'node:os';
import type { Project } from '../../sim/project/document';
import { safeText } from '../../sim/project/problem';
import { type Arguments, type OptionKinds, oneOf, SEED_RANGE, TRIALS_RANGE, wholeNumber } from './arguments';
import { Refusal } from './refusal';

export const RUN_OPTIONS: OptionKinds = {
  json: 'flag',
  trials: 'value',
  seed: 'value',
  rule: 'value',
  method: 'value',
  budget: 'flag',
  'no-budget': 'flag',
  workers: 'value',
};

const MOST_WORKERS = 256;

/** For fewer joints than these, bringing threads up to speed takes longer than they save. */
const JOINTS_WORTH_THREADS = 1_500_000;

export interface RunWishes {
  json: boolean;
  budget: boolean;
  /** Threads to use for so many methods of the project. */
  workersFor: (project: Project, methodCount: number) => number;
  /** The project with what the options override. */
  override: (project: Project) => Project;
  /** Indices of the methods wanted. */
  methodsOf: (project: Project) => number[];
}

/** @throws {Refusal} for a value out of range; `methodsOf` for a method the project does not have */
export function runWishes(given: Arguments): RunWishes {
  const trials = wholeNumber(given, 'trials', TRIALS_RANGE);
  const seed = wholeNumber(given, 'seed', SEED_RANGE);
  const rule = oneOf(given, 'rule', ['contact', 'touch']);
  const workers = wholeNumber(given, 'workers', { from: 1, to: MOST_WORKERS, open: false, whole: true });
  const name = given.values.get('method');
  const budget = given.flags.findLast((flag) => flag === 'budget' || flag === 'no-budget') === 'budget';
  return {
    json: given.flags.includes('json'),
    budget,
    workersFor: ({ piece, run }, methodCount) => {
      const isLong = budget || methodCount * run.trials * piece.sides >= JOINTS_WORTH_THREADS;
      return workers ?? (isLong ? availableParallelism() : 1);
    },
    override: (project) => {
      const { settle, ...run } = project.run;
      // A number of rings asked for by name is made exactly, settled or not.
      const settling = settle !== undefined && trials === undefined ? { settle } : {};
      return {
        ...project,
        run: { trials: trials ?? run.trials, seed: seed ?? run.seed, rule: rule ?? run.rule, ...settling },
      };
    },
    methodsOf: ({ methods }) => {
      if (name === undefined) return methods.map((_, index) => index);
      const found = methods.findIndex((method) => method.name === name);
      if (found >= 0) return [found];
      const names = methods.map((method) => `"${safeText(method.name)}"`).join(', ');
      throw new Refusal([
        `Option --method is "${safeText(name)}", which the file does not have. Give one of ${names}.`,
      ]);
    },
  };
}
