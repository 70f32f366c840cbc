/** The options of the commands that simulate rings. */
import { availableParallelism } from 'node:os';
import type { Project } from '../../sim/project/document';
import { safeText } from '../../sim/project/problem';
import { type Arguments, type OptionKinds, oneOf, SEED_RANGE, TRIALS_RANGE, wholeNumber } from './arguments';
import { Refusal } from './refusal';

export const RING_OPTIONS: OptionKinds = {
  json: 'flag',
  trials: 'value',
  seed: 'value',
  rule: 'value',
  method: 'value',
  workers: 'value',
};

export const RUN_OPTIONS: OptionKinds = { ...RING_OPTIONS, budget: 'flag', 'no-budget': 'flag', timing: 'flag' };

const MOST_WORKERS = 256;

/** For fewer joints than these, closed by contact, bringing threads up to speed takes longer than they save. */
const JOINTS_WORTH_THREADS = 2_500_000;
/** Work for a joint closed by touch, as a part of that by contact. */
const TOUCH_SHARE = 0.25;

export interface RunWishes {
  json: boolean;
  budget: boolean;
  timing: boolean;
  /** Rings asked for by name. */
  trials: number | undefined;
  /** Threads to use for work that is long in any case. */
  workers: number;
  /** Threads to use for so many methods of the project. */
  workersFor: (project: Project, methodCount: number) => number;
  /** The project with what the options override. */
  override: (project: Project) => Project;
  /** Indices of the methods wanted. */
  methodsOf: (project: Project) => number[];
}

/** @throws {Refusal} for a value out of range; `methodsOf` as `methodsWanted` */
export function runWishes(given: Arguments): RunWishes {
  const trials = wholeNumber(given, 'trials', TRIALS_RANGE);
  const seed = wholeNumber(given, 'seed', SEED_RANGE);
  const rule = oneOf(given, 'rule', ['contact', 'touch']);
  const workers = wholeNumber(given, 'workers', { from: 1, to: MOST_WORKERS, open: false, whole: true });
  const budget = given.flags.findLast((flag) => flag === 'budget' || flag === 'no-budget') === 'budget';
  return {
    json: given.flags.includes('json'),
    budget,
    timing: given.flags.includes('timing'),
    trials,
    workers: workers ?? availableParallelism(),
    workersFor: ({ piece, run }, methodCount) => {
      const work = methodCount * run.trials * piece.sides * (run.rule === 'touch' ? TOUCH_SHARE : 1);
      const isLong = budget || work >= JOINTS_WORTH_THREADS;
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
    methodsOf: (project) => methodsWanted(given, project),
  };
}

/**
 * Indices of the methods that --method asks for; all of them without it.
 *
 * @throws {Refusal} for a method the project does not have
 */
export function methodsWanted(given: Arguments, { methods }: Project): number[] {
  const name = given.values.get('method');
  if (name === undefined) return methods.map((_, index) => index);
  const found = methods.findIndex((method) => method.name === name);
  if (found >= 0) return [found];
  const names = methods.map((method) => `"${safeText(method.name)}"`).join(', ');
  throw new Refusal([`Option --method is "${safeText(name)}", which the file does not have. Give one of ${names}.`]);
}
