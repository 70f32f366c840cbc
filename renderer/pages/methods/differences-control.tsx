/** Chooses the method that the others are held against, and says of each what it does otherwise. */
import { methodDifferenceSentence } from '../../../sim/wording/method-differences';
import { MethodMark } from '../../parts/method-mark';
import { useDocument } from '../../state/document-store';
import { useView } from '../../state/view-store';
import { useHeldAgainst } from './differs';

const NONE = '';

export function DifferencesControl() {
  const methods = useDocument((state) => state.project.methods);
  const other = useHeldAgainst();
  if (methods.length < 2) return null;
  return (
    <div className="differences">
      <label>
        Show what differs from{' '}
        <select
          value={other?.name ?? NONE}
          onChange={(event) => useView.setState({ differsFrom: event.target.value || null })}
        >
          <option value={NONE}>no method</option>
          {methods.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <ul aria-live="polite">
        {other !== null &&
          methods.map(
            (method, index) =>
              method.name !== other.name && (
                <li key={method.name}>
                  <MethodMark index={index} /> {methodDifferenceSentence(method, other)}
                </li>
              ),
          )}
      </ul>
    </div>
  );
}
