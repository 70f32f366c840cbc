// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { SimulationFailed, type SimulationWorker, simulationPool } from '../../../renderer/worker/pool';
import type { Task, ToWorker } from '../../../renderer/worker/protocol';
import { bestAim } from '../../../sim/decide/aim';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { bits } from '../../support/bits';
import { inProcessWorker } from './in-process-worker';

/** With half the staves, so that a ring takes less. */
function example(trials: number): Project {
  const project = exampleProject();
  return { ...project, piece: { ...project.piece, sides: 6 }, run: { ...project.run, trials } };
}

const straightThrough = (project: Project, method: number): MethodResult => finish(runMethod(project, method));

test('a worker gives the same rings as the engine run straight through', async () => {
  const project = example(3000);
  const pool = simulationPool(1, inProcessWorker);
  const [result] = (await pool.run({ project, methods: [1] }).results) ?? [];
  const expected = straightThrough(project, 1);
  expect(bits(result)).toEqual(bits(expected));
});

test('1, 2 and 7 workers give the same bits', async () => {
  // Two blocks, the last a short one.
  const project = example(4100);
  const methods = project.methods.map((_, method) => method);
  const expected = methods.map((method) => straightThrough(project, method));
  for (const size of [1, 2, 7]) {
    const pool = simulationPool(size, inProcessWorker);
    const results = await Promise.all(methods.map((method) => pool.run({ project, methods: [method] }).results));
    results.forEach((found, method) => {
      const [result] = found ?? [];
      expect(bits(result)).toEqual(bits(expected[method]!));
    });
  }
}, 60_000);

test('never more workers are made than the pool has room for, and every task is answered', async () => {
  let made = 0;
  const pool = simulationPool(2, () => {
    made++;
    return inProcessWorker();
  });
  const project = example(500);
  const results = await Promise.all([0, 1, 2, 3].map((method) => pool.run({ project, methods: [method] }).results));
  expect(made).toBe(2);
  expect(results.map((found) => found?.[0]?.prediction.name)).toEqual(project.methods.map(({ name }) => name));
});

const LONG = 2_000_000;

test('a stop keeps the rings done so far and says that it was cancelled', async () => {
  const pool = simulationPool(1, inProcessWorker);
  let progress = 0;
  const heard: string[] = [];
  const task = pool.run(
    { project: example(LONG), methods: [1] },
    {
      progress: ({ ringsDone }) => {
        progress = ringsDone;
        task.stop();
      },
      stopped: () => heard.push('stopped'),
    },
  );
  const [result] = (await task.results) ?? [];
  heard.push('result');
  expect(heard).toEqual(['stopped', 'result']);
  expect(result?.prediction.stopReason).toBe('cancelled');
  expect(result?.prediction.trials).toBeGreaterThanOrEqual(progress);
  expect(result?.prediction.trials).toBeLessThan(LONG);
  expect(result?.sample.showGapMm).toHaveLength(result?.prediction.trials ?? -1);
}, 60_000);

test('methods asked for together come together, in the order asked for; a stop leaves out those not begun', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const together = await pool.run({ project: example(300), methods: [2, 0] }).results;
  const expected = [2, 0].map((method) => straightThrough(example(300), method));
  expect(bits(together)).toEqual(bits(expected));
  const task = pool.run({ project: example(LONG), methods: [1, 3] }, { progress: () => task.stop() });
  expect((await task.results)?.map(({ prediction }) => prediction.stopReason)).toEqual(['cancelled']);
}, 60_000);

test('a dropped task gives nothing and leaves the worker free for the next', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const long = pool.run({ project: example(LONG), methods: [1] }, { progress: () => long.drop() });
  const waiting = pool.run({ project: example(LONG), methods: [0] });
  waiting.drop();
  const next = pool.run({ project: example(300), methods: [2] });
  expect(await waiting.results).toBeNull();
  expect(await long.results).toBeNull();
  expect((await next.results)?.[0]?.prediction.trials).toBe(300);
}, 60_000);

test('a task dropped while its end is on its way does not free its worker twice', async () => {
  const heard: ToWorker[] = [];
  const worker: SimulationWorker = { onmessage: null, onerror: null, postMessage: (message) => heard.push(message) };
  const end = (id: number): void =>
    worker.onmessage?.(new MessageEvent('message', { data: { say: 'results', id, results: [] } }));
  const pool = simulationPool(1, () => worker);
  const dropped = pool.run({ project: example(300), methods: [0] });
  const [{ id = 0 } = {}] = heard;
  dropped.drop();
  end(id);
  const first = pool.run({ project: example(300), methods: [1] });
  const second = pool.run({ project: example(300), methods: [2] });
  const runs = () => heard.filter(({ say }) => say === 'run');
  // With one worker, the second waits until the first has ended.
  expect(runs().length).toBe(2);
  end(runs()[1]?.id ?? 0);
  expect(await first.results).toEqual([]);
  expect(runs().length).toBe(3);
  end(runs()[2]?.id ?? 0);
  expect(await second.results).toEqual([]);
  expect(await dropped.results).toBeNull();
});

test('a task with a budget of time ends early with what it has', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const [result] = (await pool.run({ project: example(LONG), methods: [1], budgetMs: 50 }).results) ?? [];
  expect(result?.prediction.trials).toBeLessThan(LONG);
  expect(result?.prediction.trials).toBeGreaterThan(0);
}, 60_000);

test('a task costs as many set-ups as it is told to, with the cost of so many', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const [few] = (await pool.run({ project: example(300), methods: [1], setUps: 40 }).results) ?? [];
  const [usual] = (await pool.run({ project: example(300), methods: [1] }).results) ?? [];
  expect(few?.setUps.money).toEqual(usual?.setUps.money.slice(0, 40));
  expect(usual?.setUps.money.length).toBe(200);
  const spent = [...(few?.setUps.money ?? [])].reduce((sum, money) => sum + money, 0);
  const made = [...(few?.setUps.pieces ?? [])].reduce((sum, pieces) => sum + pieces, 0);
  expect(few?.prediction.cost.perGoodPiece).toBeCloseTo(spent / made, 9);
});

test('a project the engine refuses fails with its sentence', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const failing: Task = { project: example(300), methods: [99] };
  await expect(pool.run(failing).results).rejects.toBeInstanceOf(SimulationFailed);
  expect((await pool.run({ project: example(300), methods: [0] }).results)?.[0]?.prediction.trials).toBe(300);
});

test('a worker that breaks fails its task and is replaced', async () => {
  const broken: SimulationWorker = {
    onmessage: null,
    onerror: null,
    postMessage: () => setTimeout(() => broken.onerror?.(new ErrorEvent('error', { message: 'out of memory' })), 0),
  };
  const workers = [broken, inProcessWorker()];
  const pool = simulationPool(1, () => workers.shift() ?? inProcessWorker());
  await expect(pool.run({ project: example(300), methods: [0] }).results).rejects.toThrow('out of memory');
  expect((await pool.run({ project: example(300), methods: [0] }).results)?.[0]?.prediction.trials).toBe(300);
});

test('a question that is dropped ends its worker in the middle of a step, and another takes its place', async () => {
  let terminated = 0;
  const stuck: SimulationWorker = {
    onmessage: null,
    onerror: null,
    postMessage: () => {},
    terminate: () => {
      terminated++;
    },
  };
  const workers = [stuck];
  const pool = simulationPool(1, () => workers.shift() ?? inProcessWorker());
  const project = example(300);
  const asked = pool.ask({ project, method: 0, question: { kind: 'aim' } });
  const next = pool.ask({ project, method: 0, question: { kind: 'ring', ring: 5 } });
  asked.drop();
  expect(await asked.answer).toBeNull();
  expect(terminated).toBe(1);
  expect((await next.answer)?.ring).toBe(5);
});

test('a long question tells how far it has come and answers as the engine does', async () => {
  const pool = simulationPool(1, inProcessWorker);
  const short = example(300);
  const project: Project = { ...short, run: { ...short.run, rule: 'touch' } };
  let told = 0;
  const asked = pool.ask({ project, method: 1, question: { kind: 'aim' } }, ({ done }) => {
    expect(done).toBeGreaterThan(told);
    told = done;
  });
  const answer = await asked.answer;
  expect(told).toBeGreaterThan(0);
  expect(answer).toEqual(finish(bestAim(project, 1)));
}, 60_000);
