/** The units on the screen; changing them never changes the piece. */
import { ChoiceField } from '../../inputs/choice-field';
import type { Choice } from '../../inputs/field-props';
import { ChoiceAt } from '../../parts/field-at';
import { edit, useDocument } from '../../state/document-store';
import { useView, type ViewState } from '../../state/view-store';

const ANGLES: readonly Choice<ViewState['angleStyle']>[] = [
  { value: 'decimal', label: '22.5°' },
  { value: 'minutes', label: '22°30′' },
];

export function DisplayInputs() {
  const display = useDocument((state) => state.project.display);
  const inchFractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  return (
    <fieldset className="group">
      <legend>Units</legend>
      <ChoiceAt path="display" value={display} onChange={(display) => edit((project) => ({ ...project, display }))} />
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
      <ChoiceField
        label="Angles as"
        value={angleStyle}
        choices={ANGLES}
        onChange={(angleStyle) => useView.setState({ angleStyle })}
      />
    </fieldset>
  );
}
