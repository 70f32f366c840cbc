import {
  Button,
  ListBox,
  ListBoxItem,
  Popover,
  Radio,
  RadioGroup,
  Select,
  SelectValue,
  Text,
} from 'react-aria-components';
import './choice.css';
import { FieldHead, FieldNotes, useHelp } from './field-head';
import type { Choice, ChoiceFieldProps } from './field-props';

const MOST_SIDE_BY_SIDE = 4;

/** One of several named choices. */
export function ChoiceField<Value extends string>(props: ChoiceFieldProps<Value>) {
  const { label, value, choices, problem, help, origin, isDisabled = false } = props;
  const helpState = useHelp();
  const layout = props.layout ?? (choices.length <= MOST_SIDE_BY_SIDE ? 'row' : 'menu');
  const choose = (chosen: unknown) => {
    const choice = choices.find((one) => one.value === chosen);
    if (choice === undefined || choice.value === value) return;
    props.onGestureStart?.();
    props.onChange(choice.value);
    props.onGestureEnd?.();
  };
  const head = <FieldHead label={label} help={help} state={helpState} />;
  const notes = <FieldNotes problem={problem} help={help} origin={origin} state={helpState} />;
  const isInvalid = problem !== undefined;

  if (layout === 'menu') {
    return (
      <Select className="field" value={value} onChange={choose} isInvalid={isInvalid} isDisabled={isDisabled}>
        {head}
        <Button className="choice-button">
          <SelectValue className="choice-shown" />
          <span aria-hidden="true" className="choice-arrow" />
        </Button>
        {notes}
        <Popover className="choice-popover">
          <ListBox className="choice-list">
            {choices.map((choice) => (
              <ListBoxItem key={choice.value} id={choice.value} textValue={choice.label} className="choice-item">
                <Text slot="label">{choice.label}</Text>
                {choice.note !== undefined && (
                  <Text slot="description" className="choice-note">
                    {choice.note}
                  </Text>
                )}
              </ListBoxItem>
            ))}
          </ListBox>
        </Popover>
      </Select>
    );
  }
  return (
    <RadioGroup
      className="field"
      value={value}
      onChange={choose}
      orientation={layout === 'row' ? 'horizontal' : 'vertical'}
      isInvalid={isInvalid}
      isDisabled={isDisabled}
      validationBehavior="aria"
    >
      {head}
      <span className="choice-group" data-layout={layout}>
        {choices.map((choice) => (
          <ChoiceRadio key={choice.value} choice={choice} />
        ))}
      </span>
      {notes}
    </RadioGroup>
  );
}

function ChoiceRadio({ choice }: { choice: Choice<string> }) {
  return (
    <Radio value={choice.value} className="choice-radio">
      <span aria-hidden="true" className="choice-mark" />
      <span className="choice-words">
        {choice.label}
        {choice.note !== undefined && <span className="choice-note">{choice.note}</span>}
      </span>
    </Radio>
  );
}
