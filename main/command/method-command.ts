/** What the commands that ask one question of every method have in common: options, tasks, progress, output. */
import { ruleUsed } from '../../sim/closure/ring-closer';
import type { Method, Project } from '../../sim/project/document';
import { type Arguments, type OptionKinds, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { titleTexts } from './predict';
import { progressLine } from './progress';
import { RING_OPTIONS, runWishes } from './run-options';
import type { CommandIo } from './streams';
import type { TaskOptions, TaskRunner } from './task';
import { taskRunner } from './task-runner';

/** A question about one method of a project. `Wish` is what the command's own options come to. */
export interface MethodQuestion<Answer, Wish> {
  command: string;
  /** Options beside those that every simulation has. */
  kinds: OptionKinds;
  /** @throws {Refusal} when an option of its own cannot be used */
  wish(given: Arguments): Wish;
  /** How many tasks `ask` sets, for the progress. */
  tasks(project: Project, method: number, options: TaskOptions): number;
  ask(runner: TaskRunner, project: Project, method: number, options: TaskOptions, wish: Wish): Promise<Answer>;
  /** The method's keys after its name and rule. */
  json(answer: Answer): object;
  texts(answer: Answer, project: Project, method: Method): string[];
  /** Said once, after all methods. */
  note?: string;
}

export type Command = (args: readonly string[], io: CommandIo, workerProgram: URL) => Promise<void>;

export function methodCommand<Answer, Wish>(question: MethodQuestion<Answer, Wish>): Command {
  const { command } = question;
  return async (args, io, workerProgram) => {
    const given = readArguments(command, args, { ...RING_OPTIONS, ...question.kinds }, 1);
    const wishes = runWishes(given);
    const wish = question.wish(given);
    const project = wishes.override(await openProject(command, given.operands, io));
    const methods = wishes.methodsOf(project);
    const options = wishes.trials === undefined ? {} : { trials: wishes.trials };
    const wanted = methods.reduce((sum, method) => sum + question.tasks(project, method, options), 0);
    const progress = progressLine(io.stderr, 1);
    const runner = taskRunner(project, { workers: Math.min(wishes.workers, wanted), workerProgram });
    const counted = counting(runner, (done) => progress.show(0, done / wanted));
    let answers: Answer[];
    try {
      answers = await Promise.all(methods.map((method) => question.ask(counted, project, method, options, wish)));
    } finally {
      await runner.close();
      progress.clear();
    }
    const asked = methods.map((index, k) => ({ method: project.methods[index]!, answer: answers[k]! }));
    if (wishes.json) {
      const found = {
        format: `ringtrue-${command}`,
        version: 1,
        title: project.title,
        seed: project.run.seed,
        methods: asked.map(({ method, answer }) => {
          return { name: method.name, rule: ruleUsed(method.assembly, project.run.rule), ...question.json(answer) };
        }),
      };
      io.stdout.write(`${JSON.stringify(found, null, 2)}\n`);
      return;
    }
    const texts = asked.flatMap(({ method, answer }) => question.texts(answer, project, method));
    if (question.note !== undefined) texts.push(question.note);
    io.stdout.write(fitForTerminal(`${[...titleTexts(project), ...texts].join('\n\n')}\n`));
  };
}

function counting(runner: TaskRunner, show: (done: number) => void): TaskRunner {
  let done = 0;
  return {
    do: async (task) => {
      const outcome = await runner.do(task);
      show(++done);
      return outcome;
    },
    close: () => runner.close(),
  };
}
