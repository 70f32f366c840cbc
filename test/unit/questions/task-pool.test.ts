/** Workers that take tasks: how many, in which order, and what becomes of those stopped, dropped or broken. */
import { expect, test } from 'vitest';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { askPool } from '../../../sim/questions/ask-pool';
import { type RunningRings, runRings } from '../../../sim/questions/rings';
import { type StartWorker, TaskDropped, TaskFailed, type TaskWorker, taskPool } from '../../../sim/questions/task-pool';
import type { FromWorker, ToWorker } from '../../../sim/questions/work-loop';
import { BLOCK_TRIALS, finish } from '../../../sim/run/block-loop';
import type { RunProgress } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { answerTo } from '../../support/answer-to';
import { inProcessWorker } from '../../support/in-process-worker';

function example(trials: number): Project {
  const project = exampleProject();
  return { ...project, run: { ...project.run, trials } };
}

const LONG = 2_000_000;
const nowMs = (): number => performance.now();

test('1, 2 and 7 workers give the same bits as the engine run straight through', async () => {
  const project = example(9001);
  const methods = project.methods.map((_, method) => method);
  const expected = methods.map((method) => finish(runMethod(project, method)));
  for (const size of [1, 2, 7]) {
    const { results } = runRings(taskPool(size, inProcessWorker), project, methods, {});
    expect(await Promise.all(results)).toEqual(expected);
  }
}, 60_000);

test('never more workers are started than the pool has room for, and every task is answered', async () => {
  let started = 0;
  const pool = taskPool(2, (hear, broke) => {
    started++;
    return inProcessWorker(hear, broke);
  });
  const job = pool.job(example(500));
  const blocks = await Promise.all([0, 1, 2, 3].map((method) => job.do({ kind: 'block', method, block: 0 })));
  expect(started).toBe(2);
  expect(blocks.map(({ rings }) => rings)).toEqual([500, 500, 500, 500]);
});

test('one method’s blocks are made by several workers at once', async () => {
  const asked: ToWorker[][] = [];
  const pool = taskPool(3, () => {
    const heard: ToWorker[] = [];
    asked.push(heard);
    return { tell: (message) => heard.push(message) };
  });
  runRings(pool, example(40_000), [0], {});
  await Promise.resolve();
  const kinds = asked.map(([first]) => (first?.say === 'do' ? first.task.kind : null));
  expect(kinds).toEqual(['cost', 'block', 'block']);
});

test('a stop keeps the whole blocks done so far, and says that it was cancelled', async () => {
  const pool = taskPool(2, inProcessWorker);
  const told: RunProgress[] = [];
  const running: RunningRings = runRings(pool, example(LONG), [1, 3], {
    nowMs,
    onProgress: (progress) => {
      told.push(progress);
      running.stop();
    },
  });
  const [result, notBegun] = await Promise.all(running.results);
  expect(told).toHaveLength(1);
  expect(notBegun).toBeNull();
  expect(result?.prediction).toMatchObject({ stopReason: 'cancelled', trials: told[0]?.ringsDone });
  expect(result?.sample.showGapMm).toEqual(finish(runMethod(example(told[0]?.ringsDone ?? 0), 1)).sample.showGapMm);
}, 60_000);

test('a run stopped before its first block is done waits for that one', async () => {
  const running = runRings(taskPool(2, inProcessWorker), example(LONG), [1, 3], { nowMs });
  await Promise.resolve();
  running.stop();
  const [begun, notBegun] = await Promise.all(running.results);
  expect(begun?.prediction).toMatchObject({ stopReason: 'cancelled', trials: BLOCK_TRIALS });
  expect(notBegun).toBeNull();
}, 60_000);

test('costing that is stopped, begun or not, makes do with fewer set-ups', async () => {
  const job = taskPool(1, inProcessWorker).job(example(LONG));
  const costs = [0, 1].map((method) => job.do({ kind: 'cost', method }));
  job.stop();
  for (const { money } of await Promise.all(costs)) {
    expect(money.length).toBeLessThan(2000);
    expect(money.length).toBeGreaterThan(0);
  }
}, 60_000);

test('a dropped run gives nothing and leaves the workers free for the next', async () => {
  const pool = taskPool(1, inProcessWorker);
  const long = runRings(pool, example(LONG), [1], { onProgress: () => long.drop() });
  const waiting = runRings(pool, example(LONG), [0], {});
  waiting.drop();
  const next = runRings(pool, example(300), [2], {});
  expect((await next.results[0])?.prediction.trials).toBe(300);
  await expect(long.results[0]).rejects.toBeInstanceOf(TaskDropped);
  await expect(waiting.results[0] ?? null).resolves.toBeNull();
}, 60_000);

/** A pool of one worker that only notes what it is told. */
function noted() {
  const heard: ToWorker[] = [];
  let answer: (message: FromWorker) => void = () => {};
  let broken: (error: Error) => void = () => {};
  const worker: TaskWorker = { tell: (message) => heard.push(message) };
  const pool = taskPool(1, (hear, broke) => {
    [answer, broken] = [hear, broke];
    return worker;
  });
  const begun = () => heard.flatMap((message) => (message.say === 'do' ? [message] : []));
  const end = (id: number, outcome = 0): void => answer({ say: 'done', id, outcome });
  return { pool, worker, begun, end, break: (error: Error) => broken(error) };
}

const yieldOf = (method: number) => ({ kind: 'yieldAsItIs', method, options: {} }) as const;

test('a task dropped while its end is on its way does not free its worker twice', async () => {
  const { pool, begun, end } = noted();
  const dropping = pool.job(example(300));
  const dropped = dropping.do(yieldOf(0));
  dropping.drop();
  const job = pool.job(example(300));
  const first = job.do(yieldOf(1));
  const second = job.do(yieldOf(2));
  end(begun()[0]?.id ?? 0);
  // With one worker, the second waits until the first has ended.
  expect(begun()).toHaveLength(2);
  end(begun()[1]?.id ?? 0, 0.1);
  expect(await first).toBe(0.1);
  expect(begun()).toHaveLength(3);
  end(begun()[2]?.id ?? 0, 0.2);
  expect(await second).toBe(0.2);
  await expect(dropped).rejects.toBeInstanceOf(TaskDropped);
});

test('a worker is told a project once, and again only after another', async () => {
  const { pool, begun, end } = noted();
  const [one, other] = [pool.job(example(300)), pool.job(example(400))];
  for (const job of [one, one, other, one]) {
    const done = job.do(yieldOf(0));
    end(begun().at(-1)?.id ?? 0);
    await done;
  }
  expect(begun().map(({ project }) => project?.run.trials)).toEqual([300, undefined, 400, 300]);
});

test('what is done is summed up before more is begun', () => {
  const { pool, begun, end } = noted();
  const job = pool.job(example(300));
  job.do(yieldOf(0));
  job.do(yieldOf(1));
  const { cost, blocks } = { cost: {} as never, blocks: [] };
  job.do({ kind: 'merge', method: 0, blocks, stopReason: 'settled', cost });
  end(begun()[0]?.id ?? 0);
  expect(begun()[1]?.task.kind).toBe('merge');
});

test('a preview ends early with what it has when its time is over', async () => {
  const job = taskPool(1, inProcessWorker).job(example(LONG));
  const [result] = await job.do({ kind: 'preview', methods: [1], setUps: 40, budgetMs: 50 });
  expect(result?.prediction.trials).toBeLessThan(LONG);
  expect(result?.prediction.trials).toBeGreaterThan(0);
}, 60_000);

test('a preview gives its methods together, in the order asked for, and costs as many set-ups as it is told to', async () => {
  const job = taskPool(1, inProcessWorker).job(example(300));
  const results = await job.do({ kind: 'preview', methods: [2, 0], setUps: 40, budgetMs: 60_000 });
  const usual = [2, 0].map((method) => finish(runMethod(example(300), method)));
  expect(results.map(({ sample }) => sample)).toEqual(usual.map(({ sample }) => sample));
  expect(results[0]?.setUps.money).toEqual(usual[0]?.setUps.money.slice(0, 40));
  const sumOf = (numbers: Float64Array = new Float64Array()) => [...numbers].reduce((sum, x) => sum + x, 0);
  const { money, pieces } = results[0]?.setUps ?? {};
  expect(results[0]?.prediction.cost.perGoodPiece).toBeCloseTo(sumOf(money) / sumOf(pieces), 9);
});

test('a project the engine refuses fails the run of that method alone, with its sentence', async () => {
  const pool = taskPool(2, inProcessWorker);
  const { results } = runRings(pool, example(300), [99, 0], {});
  await expect(results[0]).rejects.toThrow('Method 99 is not one of the 4 in the project.');
  await expect(results[0]).rejects.toBeInstanceOf(TaskFailed);
  expect((await results[1])?.prediction.trials).toBe(300);
});

test('a worker that breaks fails its task and is replaced', async () => {
  const broken: StartWorker = (_hear, broke) => ({
    tell: () => setTimeout(() => broke(new Error('out of memory')), 0),
  });
  const starts = [broken];
  const pool = taskPool(1, (hear, broke) => (starts.shift() ?? inProcessWorker)(hear, broke));
  const job = pool.job(example(300));
  await expect(job.do(yieldOf(0))).rejects.toThrow('out of memory');
  expect(await job.do(yieldOf(0))).toBeGreaterThan(0);
});

test('a question that is dropped ends its workers in the middle of their steps, and others take their place', async () => {
  let ended = 0;
  const stuck: StartWorker = () => ({ tell: () => {}, end: () => ended++ });
  const starts = [stuck, stuck];
  const pool = taskPool(2, (hear, broke) => (starts.shift() ?? inProcessWorker)(hear, broke));
  const project = example(300);
  const asked = askPool(pool, project, 0, { kind: 'aim' });
  const next = askPool(pool, project, 0, { kind: 'ring', ring: 5 });
  asked.drop();
  expect(await asked.answer).toBeNull();
  expect(ended).toBe(2);
  expect((await next.answer)?.ring).toBe(5);
});

test('a question whose task fails fails once, and the rest of its tasks are given up', async () => {
  const { pool, begun, break: breakDown } = noted();
  const asked = askPool(pool, example(300), 0, { kind: 'aim' });
  expect(begun()).toHaveLength(1);
  breakDown(new Error('out of memory'));
  await expect(asked.answer).rejects.toThrow('out of memory');
  const next = pool.job(example(300));
  void next.do(yieldOf(3));
  const { id, task } = begun().at(-1) ?? {};
  // The one that was begun in the place of the broken worker was dropped with the others.
  expect({ id: id !== undefined, task }).toEqual({ id: true, task: yieldOf(3) });
});

test('a long question tells how many of its tasks are done and answers as in one thread', async () => {
  const project = example(300);
  const told: number[] = [];
  const asked = askPool(taskPool(2, inProcessWorker), project, 1, { kind: 'aim' }, ({ done, wanted }) => {
    told.push(done / wanted);
  });
  const answer = await asked.answer;
  expect(told).toEqual(told.toSorted((a, b) => a - b));
  expect([told.length > 10, told.at(-1)]).toEqual([true, 1]);
  expect(answer).toEqual(await answerTo(project, 1, { kind: 'aim' }));
}, 60_000);
