/** What can be kept of the simulated project: the prediction as JSON, and every single ring of one method. */
import type { Host } from '../../main/contract/host';
import { predictionJson } from '../../sim/export/prediction-json';
import { ringFigures, ringTableName } from '../../sim/export/ring-figures';
import type { MethodResult } from '../../sim/run/prediction';
import { useHost } from '../parts/host-context';
import { resultAtLimit } from '../state/at-limit';
import { useDocument } from '../state/document-store';
import { useJointsView } from '../state/joints-view';
import { type MethodOutcome, methodOutcomes, useMethodOutcomes } from '../state/method-outcomes';
import { methodLookedAt } from '../state/method-shown';
import { whyNoOutput } from '../state/problems';
import { useRun } from '../state/run-store';
import { useView } from '../state/view-store';
import { csvOf, exportName, saveExport } from './save-export';
import type { WayToSave } from './save-menu';

const NOT_YET = 'Wait until the figures are worked out in full.';

/** All rings by the file's own rule, under the limit that is set; null before they are there. */
function wholeResult({ method, outcome, isFresh }: MethodOutcome, showLimitMm: number): MethodResult | null {
  if (!outcome || !isFresh || outcome.stage !== 'full' || outcome.showLimitMm !== showLimitMm) return null;
  return resultAtLimit(outcome.result, showLimitMm, method.name);
}

/** Of every method that takes part; null before all are there. */
function wholeResults(outcomes: readonly MethodOutcome[]): MethodResult[] | null {
  const { showGapMm } = useDocument.getState().project.limits;
  const results = outcomes.filter(({ isOff }) => !isOff).map((outcome) => wholeResult(outcome, showGapMm));
  return results.includes(null) ? null : results.filter((result) => result !== null);
}

function ringsResult(outcomes: readonly MethodOutcome[]): MethodResult | null {
  const shown = methodLookedAt(outcomes, useJointsView.getState().lookedAtMethod);
  return shown ? wholeResult(shown, useDocument.getState().project.limits.showGapMm) : null;
}

function outcomesNow(): MethodOutcome[] {
  return methodOutcomes(useDocument.getState().project, useRun.getState(), useView.getState().switchedOff);
}

const whyNot = (found: unknown): string | null => (found === null ? NOT_YET : null);

/** Why there is no prediction to keep just now, in a sentence; null when there is one. */
export const whyNoPrediction = (): string | null => whyNoOutput() ?? whyNot(wholeResults(outcomesNow()));

/** Why there are no rings to keep just now. */
export const whyNoRings = (): string | null => whyNoOutput() ?? whyNot(ringsResult(outcomesNow()));

/** The same object that `ringtrue predict --json` prints, of the methods that take part. */
export async function savePrediction(host: Host): Promise<void> {
  const { project } = useDocument.getState();
  const results = wholeResults(outcomesNow());
  if (results === null) return;
  const predictions = results.map(({ prediction }) => prediction);
  await saveExport(host, exportName(project, 'prediction', 'json'), () => predictionJson(project, predictions));
}

/** Every ring of the method that the page Joints looks at. */
export async function saveRings(host: Host): Promise<void> {
  const { project } = useDocument.getState();
  const result = ringsResult(outcomesNow());
  if (result === null) return;
  const name = exportName(project, `rings ${result.prediction.name}`, 'csv');
  await saveExport(host, name, () => csvOf(ringFigures(result, project.display), ringTableName(result), project));
}

export function usePredictionToSave(): WayToSave {
  const host = useHost();
  const outcomes = useMethodOutcomes();
  return {
    id: 'json',
    label: 'JSON',
    note: 'the whole prediction, for a machine',
    whyNot: whyNot(wholeResults(outcomes)),
    save: () => savePrediction(host),
  };
}

export function useRingsToSave(): WayToSave {
  const host = useHost();
  const outcomes = useMethodOutcomes();
  return {
    id: 'rings',
    label: 'CSV of all rings',
    note: 'one line for every ring simulated',
    whyNot: whyNot(ringsResult(outcomes)),
    save: () => saveRings(host),
  };
}
