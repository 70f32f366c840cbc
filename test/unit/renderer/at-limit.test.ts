import { expect, test } from 'vitest';
import { resultAtLimit, yieldAt } from '../../../renderer/state/at-limit';
import { exampleProject } from '../../../sim/project/example';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';

function simulated(showGapMm: number): MethodResult {
  const project = exampleProject();
  const limits = { ...project.limits, showGapMm };
  const steps = runMethod({ ...project, limits, run: { ...project.run, trials: 4000 } }, 1);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

test('rings simulated for one limit give, read at another, the chance simulated for that one', () => {
  const [at15, at5] = [simulated(0.15), simulated(0.05)];
  expect(yieldAt(at15, 0.05)).toEqual(at5.prediction.yield);
  expect(yieldAt(at5, 0.15)).toEqual(at15.prediction.yield);
  expect(at5.prediction.yield.value).toBeLessThan(at15.prediction.yield.value);
});

test('at its own limit a result reads as it was printed', () => {
  const result = simulated(0.15);
  expect(resultAtLimit(result, 0.15, result.prediction.name)).toEqual(result);
});

test('a looser limit never makes fewer good pieces', () => {
  const result = simulated(0.15);
  const chances = Array.from({ length: 81 }, (_, i) => yieldAt(result, i * 0.01).value);
  expect(chances).toEqual([...chances].sort((a, b) => a - b));
});
