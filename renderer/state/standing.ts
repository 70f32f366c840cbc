/** How far the figures on the screen are worked out. */
import { useDocument } from './document-store';
import { type MethodOutcome, methodOutcomes, useMethodOutcomes } from './method-outcomes';
import { problemsOf, useProblems } from './problems';
import { useRun, type Work } from './run-store';
import { shownProject, useShownProject } from './shown-project';
import { useView } from './view-store';

/** `summing`: stopped, but what was done by then is not on the screen yet. */
export type Standing = 'invalid' | 'failed' | 'preview' | 'refining' | 'settled' | 'summing' | 'stopped';

interface Known {
  hasProblems: boolean;
  work: Work | null;
  showLimitMm: number;
  outcomes: readonly MethodOutcome[];
}

function standingOf({ hasProblems, work, showLimitMm, outcomes }: Known): Standing {
  const isWorking = work !== null;
  const active = outcomes.filter((method) => !method.isOff);
  if (hasProblems) return 'invalid';
  if (work?.isStopped) return 'summing';
  if (active.some(({ failure }) => failure !== null) && !isWorking) return 'failed';
  const isPreview = active.some(({ outcome, isFresh }) => !outcome || !isFresh || outcome.stage === 'preview');
  if (isPreview) return isWorking ? 'preview' : 'stopped';
  const isWhole = active.every(
    ({ outcome }) => outcome?.stage === 'full' && outcome.result.prediction.stopReason !== 'cancelled',
  );
  const isGraded = active.every(({ outcome }) => outcome?.showLimitMm === showLimitMm);
  if (isWhole && isGraded) return 'settled';
  return isWorking ? 'refining' : 'stopped';
}

export function useStanding(): Standing {
  const hasProblems = useProblems().length > 0;
  const work = useRun((state) => state.work);
  const showLimitMm = useShownProject().limits.showGapMm;
  return standingOf({ hasProblems, work, showLimitMm, outcomes: useMethodOutcomes() });
}

/** The same outside a panel. */
export function standingNow(): Standing {
  const { project } = useDocument.getState();
  const shown = shownProject(project);
  const run = useRun.getState();
  return standingOf({
    hasProblems: problemsOf(project).length > 0,
    work: run.work,
    showLimitMm: shown.limits.showGapMm,
    outcomes: methodOutcomes(shown, run, useView.getState().switchedOff),
  });
}
