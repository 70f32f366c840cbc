/** How settled the figures are: a quick preview, on their way, settled, or stopped; with the way to stop and go on. */
import { useDocument } from '../state/document-store';
import { useMethodOutcomes } from '../state/method-outcomes';
import { useProblems } from '../state/problems';
import { useRun, type Work } from '../state/run-store';
import { useSimulation } from './simulation-context';

const WHOLE = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

type Standing = 'invalid' | 'failed' | 'preview' | 'refining' | 'settled' | 'stopped';

function useStanding(): Standing {
  const problems = useProblems();
  const working = useRun((state) => state.work !== null);
  const showLimitMm = useDocument((state) => state.project.limits.showGapMm);
  const active = useMethodOutcomes().filter((method) => !method.isOff);
  if (problems.length > 0) return 'invalid';
  if (active.some(({ failure }) => failure !== null) && !working) return 'failed';
  const isPreview = active.some(({ outcome, isFresh }) => !outcome || !isFresh || outcome.stage === 'preview');
  if (isPreview) return working ? 'preview' : 'stopped';
  const isWhole = active.every(
    ({ outcome }) => outcome?.stage === 'full' && outcome.result.prediction.stopReason !== 'cancelled',
  );
  const isGraded = active.every(({ outcome }) => outcome?.showLimitMm === showLimitMm);
  if (isWhole && isGraded) return 'settled';
  return working ? 'refining' : 'stopped';
}

function progressText({ ringsDone, ringsWanted }: Work): string {
  return `${WHOLE.format(ringsDone)} of ${WHOLE.format(ringsWanted)} rings`;
}

export function WorkMark() {
  const standing = useStanding();
  const work = useRun((state) => state.work);
  const simulation = useSimulation();
  const share = work && work.ringsWanted > 0 ? work.ringsDone / work.ringsWanted : 0;
  return (
    <div className="work-mark" data-standing={standing}>
      <svg viewBox="0 0 16 16" aria-hidden="true" focusable="false">
        <circle cx="8" cy="8" r="6.5" className="work-ring" />
        <circle
          cx="8"
          cy="8"
          r="6.5"
          className="work-done"
          pathLength="1"
          strokeDasharray={`${standing === 'settled' ? 1 : share} 1`}
          transform="rotate(-90 8 8)"
        />
      </svg>
      <span>
        {standing === 'invalid' && 'A value cannot be used; the figures are those from before it.'}
        {standing === 'failed' && 'Not every method could be simulated.'}
        {standing === 'preview' && 'Quick preview; the figures are being refined.'}
        {standing === 'refining' && `Refining${work && work.ringsDone > 0 ? `: ${progressText(work)}` : ''}.`}
        {standing === 'settled' && 'Settled.'}
        {standing === 'stopped' && 'Stopped; the figures rest on the rings done so far.'}
      </span>
      {(standing === 'preview' || standing === 'refining') && (
        <button type="button" className="quiet" onClick={simulation.cancel}>
          Stop
        </button>
      )}
      {standing === 'stopped' && (
        <button type="button" className="quiet" onClick={simulation.goOn}>
          Go on
        </button>
      )}
    </div>
  );
}
