/** How settled the figures are: a quick preview, on their way, settled, or stopped; with the way to stop and go on. */
import { Explained } from '../inputs/explained';
import { useRun, type Work } from '../state/run-store';
import { useStanding } from '../state/standing';
import { useSimulation } from './simulation-context';
import { WorkRing } from './work-ring';

const WHOLE = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

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
      <WorkRing share={standing === 'settled' ? 1 : share} />
      <span>
        {standing === 'invalid' && 'A value cannot be used; the figures are those from before it.'}
        {standing === 'failed' && 'Not every method could be simulated.'}
        {standing === 'preview' && 'Quick preview; the figures are being refined.'}
        {standing === 'refining' && `Refining${work && work.ringsDone > 0 ? `: ${progressText(work)}` : ''}.`}
        {standing === 'settled' && 'Settled.'}
        {standing === 'summing' && 'Stopped; the rings done so far are being summed up.'}
        {standing === 'stopped' && 'Stopped; the figures rest on the rings done so far.'}
      </span>
      <Explained term="settled" />
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
