/** Rings that will not close, in the figures of a run. */
import { expect, test } from 'vitest';
import { runBlock } from '../../../sim/run/block';
import { finish } from '../../../sim/run/block-loop';
import { methodPlan } from '../../../sim/run/plan';
import { runMethod } from '../../../sim/run/run-method';
import { predictionTable } from '../../../sim/wording/tables';
import { projectWith } from '../../support/projects';

/** Eight upright staves, the tilt off by far: many rings will not close, and their raw sizes are absurd. */
const project = (sharedDeg: number) =>
  projectWith({
    method: { tilt: { sharedDeg }, assembly: { by: 'oneByOne', ends: 'flush' } },
    run: { trials: 4000, seed: 3 },
  });

const run = (sharedDeg: number) => finish(runMethod(project(sharedDeg), 0));

test('the mean sizes are those of the rings that close, the mouth is that of all', () => {
  const { prediction, stepMm } = run(0.25);
  const {
    mouthMm,
    clearOpeningMm,
    closes,
    stepMm: steps,
    showGapMm,
  } = runBlock(methodPlan(project(0.25), 0), 3, 0, 4000);
  const meanOf = (values: Float64Array, counts: (ring: number) => boolean) => {
    const kept = values.filter((_, ring) => counts(ring));
    return kept.reduce((sum, value) => sum + value, 0) / kept.length;
  };
  const closing = (ring: number) => closes[ring] === 1;
  expect(prediction.willNotClose.value).toBeGreaterThan(0.05);
  expect(prediction.clearOpeningMm.mean).toBeCloseTo(meanOf(clearOpeningMm, closing), 9);
  expect(stepMm.mean).toBeCloseTo(meanOf(steps, closing), 9);
  expect(prediction.showGapMm.mean).toBeCloseTo(meanOf(showGapMm, closing), 9);
  expect(prediction.mouthMm.mean).toBeCloseTo(
    meanOf(mouthMm, () => true),
    9,
  );
});

test('in percentiles their openings count as under, their gaps and steps as over', () => {
  const { prediction, stepMm, outOfRoundMm } = run(0.25);
  const share = prediction.willNotClose.value;
  // Over half of all close, more than a twentieth do not.
  expect(share).toBeGreaterThan(0.05);
  expect(share).toBeLessThan(0.5);
  expect(prediction.clearOpeningMm.p05).toBe(Number.NEGATIVE_INFINITY);
  expect(Number.isFinite(prediction.clearOpeningMm.p50)).toBe(true);
  expect([stepMm.p95, outOfRoundMm.p95]).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
  for (const gap of [prediction.showGapMm.p95, prediction.hiddenGapMm.p95, ...prediction.jointShowGapP95Mm]) {
    expect(gap).toBeGreaterThan(2);
  }
  expect(Math.max(...prediction.jointShowGapP95Mm)).toBeLessThanOrEqual(prediction.showGapMm.p95);
});

test('nothing fits inside a ring that will not close', () => {
  const { piece, ...rest } = project(5);
  const withInsert = { ...rest, piece: { ...piece, insert: { diameterMm: 10, clearanceMm: 0 } } };
  const { insertFits, willNotClose } = finish(runMethod(withInsert, 0)).prediction;
  expect(willNotClose.value).toBeGreaterThan(0.9);
  expect(insertFits.value).toBeLessThanOrEqual(1 - willNotClose.value);
});

test('tables say so in words, and JSON leaves such a figure empty', () => {
  const result = run(5);
  const { rows } = predictionTable(result, 'metric');
  const cell = (label: string) => rows.find(([what]) => what === label)?.[1];
  expect(cell('Clear opening, middle ring')).toBe('will not close');
  expect(cell('Step between staves, 95 of 100 under')).toBe('will not close');
  expect(cell('Worst gap that shows, 95 of 100 under')).toBe('over 2 mm');
  expect(JSON.parse(JSON.stringify(result.prediction.clearOpeningMm)).p50).toBeNull();
});
