/** Which method and which ring of it is looked at, and how much wider than they are its gaps are drawn. */

import { ChoiceField } from '../../inputs/choice-field';
import type { Choice } from '../../inputs/field-props';
import { NumberField } from '../../inputs/number-field';
import { SliderField } from '../../inputs/slider-field';
import { MethodLabel } from '../../parts/method-mark';
import { useDocument } from '../../state/document-store';
import { type RingChoice, useJointsView } from '../../state/joints-view';

const RINGS: readonly Choice<RingChoice>[] = [
  { value: 'typical', label: 'A typical ring', note: 'half of all rings are tighter' },
  { value: 'good', label: 'A good ring', note: '95 of 100 are wider' },
  { value: 'bad', label: 'A bad ring', note: '95 of 100 are tighter' },
  { value: 'number', label: 'The ring with the number', note: 'in the order they were simulated' },
];

export function MethodChoice({ index }: { index: number }) {
  const methods = useDocument((state) => state.project.methods);
  return (
    <fieldset className="group">
      <legend>Method looked at</legend>
      <ul className="switches">
        {methods.map(({ name }, place) => (
          <li key={name}>
            <label className="switch">
              <input
                type="radio"
                name="method-looked-at"
                checked={place === index}
                onChange={() => useJointsView.setState({ lookedAtMethod: name })}
              />
              <MethodLabel index={place} name={name} />
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

export function RingChoiceInputs({ problem }: { problem: string | undefined }) {
  const choice = useJointsView((view) => view.ringChoice);
  const number = useJointsView((view) => view.ringNumber);
  return (
    <fieldset className="group">
      <legend>Ring drawn</legend>
      <ChoiceField
        label="Which ring"
        layout="column"
        value={choice}
        choices={RINGS}
        onChange={(ringChoice) => useJointsView.setState({ ringChoice })}
      />
      {choice === 'number' && (
        <NumberField
          label="Number of the ring"
          value={number}
          problem={problem}
          onChange={(ringNumber) => useJointsView.setState({ ringNumber })}
        />
      )}
    </fieldset>
  );
}

/** Slider positions from a tenth of what suits the ring to five times as much. */
const STEPS = 10;
const MOST = 5;

export function ExaggerationInput({ value, suited }: { value: number; suited: number }) {
  return (
    <fieldset className="group">
      <legend>Drawing</legend>
      <SliderField
        kind="number"
        label="Gaps drawn wider by"
        unit="times"
        help="The ring is to scale; its gaps alone are drawn wider, so that they can be seen."
        min={suited / STEPS}
        max={MOST * suited}
        step={suited / STEPS}
        value={value}
        problem={value > 0 ? undefined : `${value} times is not above 0. Give how many times wider gaps are drawn.`}
        onChange={(exaggeration) => useJointsView.setState({ exaggeration })}
      />
    </fieldset>
  );
}
