/** Which methods take part in the comparison just now. */
import { MethodLabel } from '../../parts/method-mark';
import { useMethodOutcomes } from '../../state/method-outcomes';
import { setSwitchedOff, showPage } from '../../state/view-store';

export function MethodSwitches() {
  const outcomes = useMethodOutcomes();
  const inUse = outcomes.filter(({ isOff }) => !isOff).length;
  return (
    <fieldset className="group">
      <legend>Methods compared</legend>
      <ul className="switches">
        {outcomes.map(({ method: { name }, index, isOff, failure }) => (
          <li key={name}>
            <label className="switch">
              <input
                type="checkbox"
                checked={!isOff}
                disabled={!isOff && inUse === 1}
                onChange={(event) => setSwitchedOff(name, !event.target.checked)}
              />
              <MethodLabel index={index} name={name} />
            </label>
            {failure !== null && <p className="problem">{failure}</p>}
          </li>
        ))}
      </ul>
      <button type="button" className="quiet" onClick={() => showPage('methods')}>
        Change the methods
      </button>
    </fieldset>
  );
}
