/** The units on the screen; changing them never changes the piece. */
import { ChoiceField } from '../../inputs/choice-field';
import { edit, useDocument } from '../../state/document-store';
import { useView } from '../../state/view-store';

const DISPLAYS = [
  { value: 'metric', label: 'Millimetres' },
  { value: 'inch', label: 'Inches' },
] as const;

export function DisplayInputs() {
  const display = useDocument((state) => state.project.display);
  const inchFractions = useView((view) => view.inchFractions);
  return (
    <fieldset className="group">
      <legend>Units</legend>
      <ChoiceField
        label="Lengths in"
        value={display}
        choices={DISPLAYS}
        onChange={(display) => edit((project) => ({ ...project, display }))}
      />
      {display === 'inch' && (
        <label className="switch">
          <input
            type="checkbox"
            checked={inchFractions}
            onChange={(event) => useView.setState({ inchFractions: event.target.checked })}
          />
          Fractions to 1/64
        </label>
      )}
    </fieldset>
  );
}
