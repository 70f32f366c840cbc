/** The same digits on any number of worker threads, with the worker program built as for shipping. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { runMethods } from '../../../main/command/run-methods';
import { threadPool } from '../../../main/command/thread-pool';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { askPool } from '../../../sim/questions/ask-pool';
import type { Question, QuestionKind } from '../../../sim/questions/questions';
import { runRings } from '../../../sim/questions/rings';
import { type TaskPool, taskPool } from '../../../sim/questions/task-pool';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult, RunProgress } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { bits } from '../../support/bits';
import { inProcessWorker } from '../../support/in-process-worker';
import { scratchFolder } from '../../support/scratch-folder';
import { shippedPrograms } from '../../support/shipped-programs';

/** Of each kind one: the index of the method asked about, and the question. */
const QUESTIONS: { readonly [Kind in QuestionKind]: [number, Question<Kind>] } = {
  budget: [0, { kind: 'budget', rings: 2000, indexRings: 5000 }],
  accuracy: [0, { kind: 'accuracy', wanted: 0.9, trials: 1000 }],
  testValue: [2, { kind: 'testValue', trials: 500 }],
  aim: [1, { kind: 'aim', trials: 500 }],
  ring: [1, { kind: 'ring', ring: 7 }],
  touchExcess: [0, { kind: 'touchExcess' }],
  hinges: [2, { kind: 'hinges', rival: 0 }],
};

let workerProgram: URL;

beforeAll(async () => {
  workerProgram = await shippedPrograms();
}, 300_000);

/** The example with half the staves: each ring takes less, and the threads have as much to keep in order. */
function lantern(run: Partial<Project['run']>): Project {
  const project = exampleProject();
  return { ...project, piece: { ...project.piece, sides: 6 }, run: { ...project.run, ...run } };
}

async function results(project: Project, workers: number, program: URL = workerProgram): Promise<MethodResult[]> {
  const methods = project.methods.map((_, index) => index);
  const found: MethodResult[] = [];
  const way = { budget: false, workers, workerProgram: program };
  for await (const result of runMethods(project, methods, way)) found.push(result);
  return found;
}

describe('worker threads', () => {
  it('give bit for bit what one thread gives, the last block being a short one', async () => {
    const project = lantern({ trials: 9001 });
    const alone = await results(project, 1);
    expect(alone.map(({ prediction }) => prediction.trials)).toEqual([9001, 9001, 9001, 9001]);
    for (const workers of [2, 4]) expect(bits(await results(project, workers))).toEqual(bits(alone));
  }, 120_000);

  it('settle after the same block as one thread, whatever was computed ahead', async () => {
    const project = lantern({ trials: 200_000, settle: { relative: 0.2 } });
    project.methods = project.methods.slice(0, 2);
    const alone = await results(project, 1);
    expect(alone[0]?.prediction.stopReason).toBe('settled');
    expect(alone[0]?.prediction.trials).toBeLessThan(200_000);
    expect(bits(await results(project, 3))).toEqual(bits(alone));
  }, 120_000);

  it('are not needed: without their program everything stays in one thread', async () => {
    const project = lantern({ trials: 9001 });
    expect(bits(await results(project, 4, new URL('absent.js', workerProgram)))).toEqual(
      bits(await results(project, 1)),
    );
  }, 120_000);

  it('give the budget too, and tell their progress up to the last ring', async () => {
    const project = lantern({ trials: 2000, rule: 'touch' });
    project.methods = [{ ...project.methods[0]!, blade: { ...project.methods[0]!.blade, snagChance: 0 } }];
    const budgets: MethodResult['prediction']['budget'][] = [];
    for (const workers of [1, 2]) {
      const told: RunProgress[] = [];
      const way = { budget: true, workers, workerProgram, onProgress: (progress: RunProgress) => told.push(progress) };
      for await (const { prediction } of runMethods(project, [0], way)) budgets.push(prediction.budget);
      expect(told.at(-1)).toEqual({ method: 0, ringsDone: 2000, ringsWanted: 2000 });
    }
    expect(budgets[0]?.length).toBeGreaterThan(3);
    expect(budgets[1]).toEqual(budgets[0]);
  }, 120_000);

  it('answer every question about a method bit for bit as one thread does', async () => {
    const project = lantern({ rule: 'touch' });
    const answers = async (pool: TaskPool) => {
      try {
        return await Promise.all(
          Object.values(QUESTIONS).map(([method, question]) => askPool(pool, project, method, question).answer),
        );
      } finally {
        await pool.close();
      }
    };
    const alone = await answers(threadPool({ workers: 1, workerProgram }));
    expect(alone.every((answer) => answer !== null)).toBe(true);
    for (const workers of [2, 5]) expect(await answers(threadPool({ workers, workerProgram }))).toEqual(alone);
    // As the window's workers do, with the messages copied.
    expect(await answers(taskPool(3, inProcessWorker))).toEqual(alone);
  }, 120_000);

  it('make the rings that the engine makes straight through, as the window’s workers do', async () => {
    const project = lantern({ trials: 9001 });
    const pool = taskPool(2, inProcessWorker);
    const { results: made } = runRings(pool, project, [0, 1], {});
    const straight = [0, 1].map((method) => finish(runMethod(project, method)));
    expect(await Promise.all(made)).toEqual(straight);
    expect((await results(project, 2)).slice(0, 2)).toEqual(straight);
  }, 120_000);

  it('that break end the run with what they said', async () => {
    const broken = join(scratchFolder(), 'broken.mjs');
    writeFileSync(broken, "throw new Error('the thread broke');");
    await expect(results(lantern({ trials: 9001 }), 2, pathToFileURL(broken))).rejects.toThrow('the thread broke');
  }, 60_000);

  it('that leave without a word end the run as well', async () => {
    const leaving = join(scratchFolder(), 'leaving.mjs');
    writeFileSync(leaving, 'process.exit(3);');
    await expect(results(lantern({ trials: 9001 }), 2, pathToFileURL(leaving))).rejects.toThrow(
      'ended before its task',
    );
  }, 60_000);

  it('keep the rings done when stopped, on one thread and on two, and leave out what was not begun', async () => {
    const project = lantern({ trials: 2_000_000 });
    for (const workers of [1, 2]) {
      const stop = new AbortController();
      const found: MethodResult[] = [];
      const way = { budget: false, workers, workerProgram, stop: stop.signal, onProgress: () => stop.abort() };
      for await (const result of runMethods(project, [0, 1, 2, 3], way)) found.push(result);
      expect(found.map(({ prediction }) => prediction.name)).toEqual([project.methods[0]!.name]);
      const { trials, stopReason } = found[0]!.prediction;
      expect(stopReason).toBe('cancelled');
      const [whole] = await results(lantern({ trials }), 1);
      expect(bits(found[0]!.sample)).toEqual(bits(whole!.sample));
    }
  }, 120_000);
});
