/** What the commands that ask one question of every method have in common: options, tasks, progress, output. */
import { ruleUsed } from '../../sim/closure/ring-closer';
import type { Method, Project } from '../../sim/project/document';
import { askPool } from '../../sim/questions/ask-pool';
import { type Answers, type Asked, type Question, type QuestionKind, tasksOf } from '../../sim/questions/questions';
import type { RingOptions } from '../../sim/questions/tasks';
import { type Arguments, type OptionKinds, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { titleTexts } from './predict';
import { progressLine } from './progress';
import { RING_OPTIONS, runWishes } from './run-options';
import type { CommandIo } from './streams';
import { threadPool } from './thread-pool';

/** A command that asks one kind of question. */
export interface MethodCommand<Kind extends QuestionKind> {
  kind: Kind;
  command: string;
  /** Options beside those that every simulation has. */
  options: OptionKinds;
  /**
   * @param trials rings asked for by name
   * @throws {Refusal} when an option of its own cannot be used
   */
  asked: (given: Arguments, trials: number | undefined) => Asked[Kind];
  /** The method's keys after its name and rule. */
  json: (answer: Answers[Kind], asked: Asked[Kind]) => object;
  texts: (answer: Answers[Kind], project: Project, method: Method) => string[];
  /** Said once, after all methods. */
  note?: string;
}

/** For a question that wants to know nothing but how many rings. */
export function ringsAsked(_given: Arguments, trials: number | undefined): RingOptions {
  return trials === undefined ? {} : { trials };
}

export type Command = (args: readonly string[], io: CommandIo, workerProgram: URL) => Promise<void>;

export function methodCommand<Kind extends QuestionKind>(question: MethodCommand<Kind>): Command {
  const { command } = question;
  return async (args, io, workerProgram) => {
    const given = readArguments(command, args, { ...RING_OPTIONS, ...question.options }, 1);
    const wishes = runWishes(given);
    const wish = question.asked(given, wishes.trials);
    const project = wishes.override(await openProject(command, given.operands, io));
    const methods = wishes.methodsOf(project);
    const put = { kind: question.kind, ...wish } as unknown as Question<Kind>;
    const wanted = methods.reduce((sum, method) => sum + tasksOf(project, method, put), 0);
    const progress = progressLine(io.stderr, 1);
    const pool = threadPool({ workers: Math.min(wishes.workers, wanted), workerProgram });
    let done = 0;
    const onProgress = () => progress.show(0, ++done / wanted);
    let answers: (Answers[Kind] | null)[];
    try {
      answers = await Promise.all(methods.map((method) => askPool(pool, project, method, put, onProgress).answer));
    } finally {
      await pool.close();
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
          return {
            name: method.name,
            rule: ruleUsed(method.assembly, project.run.rule),
            ...question.json(answer, wish),
          };
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
