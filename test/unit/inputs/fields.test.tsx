// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { AngleField } from '../../../renderer/inputs/angle-field';
import type { LengthFieldProps, OptionalLengthFieldProps } from '../../../renderer/inputs/field-props';
import { LengthField, OptionalLengthField } from '../../../renderer/inputs/length-field';
import { NumberField } from '../../../renderer/inputs/number-field';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

type Happened = (string | number | null)[];

interface KeptProps extends Partial<LengthFieldProps> {
  first: number;
  happened: Happened;
  accept: (mm: number) => boolean;
  /** Takes the way to change the figure from outside the field. */
  saveExport: (set: (mm: number) => void) => void;
}

function KeptLength({ first, happened, accept, saveExport, ...props }: KeptProps) {
  const [value, setValue] = useState(first);
  saveExport(setValue);
  return (
    <LengthField
      label="Thickness"
      display="metric"
      value={value}
      onChange={(mm) => {
        happened.push(mm);
        if (accept(mm)) setValue(mm);
      }}
      onGestureStart={() => happened.push('start')}
      onGestureEnd={() => happened.push('end')}
      {...props}
    />
  );
}

/** A length kept by its surroundings, as a page keeps it, with a record of all that the field says. */
function keptLength(first: number, props: Partial<LengthFieldProps> = {}, accept = (_mm: number) => true) {
  const happened: Happened = [];
  let set: (mm: number) => void = () => {};
  const element = (changed: Partial<LengthFieldProps>) => (
    <KeptLength
      first={first}
      happened={happened}
      accept={accept}
      saveExport={(given) => {
        set = given;
      }}
      {...props}
      {...changed}
    />
  );
  const view = render(element({}));
  return {
    happened,
    field: screen.getByRole<HTMLInputElement>('textbox', { name: 'Thickness' }),
    setFromElsewhere: (mm: number) => act(() => set(mm)),
    change: (changed: Partial<LengthFieldProps>) => view.rerender(element(changed)),
    close: view.unmount,
  };
}

function KeptStripLength({ onChange }: Pick<OptionalLengthFieldProps, 'onChange'>) {
  const [value, setValue] = useState<number | null>(1250);
  return (
    <OptionalLengthField
      label="Strip length"
      display="metric"
      whenEmpty="just enough"
      value={value}
      onChange={(mm) => {
        setValue(mm);
        onChange(mm);
      }}
    />
  );
}

const type = (field: HTMLInputElement, text: string) => {
  act(() => field.focus());
  fireEvent.change(field, { target: { value: text } });
};
const leave = (field: HTMLInputElement) => act(() => field.blur());
const press = (field: HTMLInputElement, key: string) => fireEvent.keyDown(field, { key });
const pause = () => act(() => void vi.advanceTimersByTime(1000));
const describedBy = (field: HTMLInputElement): string =>
  (field.getAttribute('aria-describedby') ?? '')
    .split(' ')
    .map((id) => document.getElementById(id)?.textContent ?? '')
    .join(' ');

describe('a length that nobody edits', () => {
  it('stays exactly what it was, though it is shown rounded and in either unit', () => {
    const { field, happened, change } = keptLength(600.0751234);
    expect(field.value).toBe('600.075');
    act(() => field.focus());
    leave(field);
    change({ display: 'inch' });
    expect(field.value).toBe('23.625');
    act(() => field.focus());
    press(field, 'Enter');
    leave(field);
    change({ display: 'metric' });
    expect(field.value).toBe('600.075');
    expect(happened).toEqual([]);
  });

  it('says its unit to those who cannot see it', () => {
    expect(describedBy(keptLength(18).field)).toContain('mm');
  });
});

describe('typing a length', () => {
  it('gives every valid figure on the way, as one gesture that ends on leaving', () => {
    const { field, happened } = keptLength(18);
    type(field, '2');
    type(field, '20');
    type(field, '20 1');
    type(field, '20 1/2 in');
    leave(field);
    expect(happened).toEqual(['start', 2, 20, 520.7, 'end']);
    expect(field.value).toBe('520.7');
  });

  it('says what was understood when it is more than a bare number', () => {
    const { field } = keptLength(18);
    type(field, '600');
    expect(screen.queryByText(/^=/)).toBeNull();
    type(field, '23 5/8 in');
    expect(screen.getByText('= 600.08 mm')).toBeTruthy();
    press(field, 'Enter');
    expect(screen.queryByText(/^=/)).toBeNull();
    expect(field.value).toBe('600.075');
  });

  it('and taking it out again leaves the figure behind the rounding alone', () => {
    const { field, happened } = keptLength(600.0751234);
    type(field, '600.0755');
    type(field, '600.075');
    leave(field);
    expect(happened).toEqual(['start', 600.0755, 600.0751234, 'end']);
  });

  it('is undone by Escape, in the same gesture', () => {
    const { field, happened } = keptLength(18);
    type(field, '25');
    press(field, 'Escape');
    expect(field.value).toBe('18');
    expect(happened).toEqual(['start', 25, 18, 'end']);
  });

  it('ends its gesture when the field goes away', () => {
    const { field, happened, close } = keptLength(18);
    type(field, '25');
    close();
    expect(happened).toEqual(['start', 25, 'end']);
  });
});

describe('text that is no length', () => {
  it('stays as it was typed, with its sentence, and the last figure stays too', () => {
    const { field, happened } = keptLength(18);
    type(field, '20 bananas');
    leave(field);
    expect(field.value).toBe('20 bananas');
    expect(field.getAttribute('aria-invalid')).toBe('true');
    expect(describedBy(field)).toContain('"bananas" is not a unit that is known here.');
    expect(happened).toEqual(['start', 'end']);
    press(field, 'Escape');
    expect(field.value).toBe('18');
    expect(field.getAttribute('aria-invalid')).toBeNull();
  });

  it('is not complained about in the middle of typing', () => {
    const { field } = keptLength(18);
    type(field, '23 5/');
    expect(field.getAttribute('aria-invalid')).toBeNull();
    pause();
    expect(field.getAttribute('aria-invalid')).toBe('true');
  });

  it('gives way when the figure changes elsewhere, as by undo', () => {
    const { field, setFromElsewhere } = keptLength(18);
    type(field, '20 bananas');
    leave(field);
    setFromElsewhere(16);
    expect(field.value).toBe('16');
    expect(field.getAttribute('aria-invalid')).toBeNull();
  });
});

describe('a figure that its surroundings do not take', () => {
  it('is kept as it was typed, with their sentence', () => {
    const sentence = 'Thickness 0 mm is not above 0. Give the finished thickness of the staves.';
    const { field, change } = keptLength(18, {}, (mm) => mm > 0);
    type(field, '0');
    change({ problem: sentence });
    leave(field);
    expect(field.value).toBe('0');
    expect(describedBy(field)).toContain(sentence);
  });
});

describe('Escape', () => {
  it('reaches a dialog around the field only when there is nothing to take back', () => {
    const reached = vi.fn();
    render(
      // biome-ignore lint/a11y/noStaticElementInteractions: stands for a dialog.
      <div onKeyDown={(event) => reached(event.key)}>
        <LengthField label="Height" display="metric" value={140} onChange={() => {}} />
      </div>,
    );
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Height' });
    type(field, '150');
    press(field, 'Escape');
    expect(reached).not.toHaveBeenCalled();
    press(field, 'Escape');
    expect(reached).toHaveBeenCalledWith('Escape');
  });
});

describe('a length that may be left out', () => {
  it('is null when the field is emptied, and the field says what that means', () => {
    const onChange = vi.fn();
    render(<KeptStripLength onChange={onChange} />);
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Strip length' });
    type(field, '');
    leave(field);
    expect(onChange).toHaveBeenLastCalledWith(null);
    expect(field.placeholder).toBe('just enough');
    expect(field.getAttribute('aria-invalid')).toBeNull();
  });
});

describe('help and origin', () => {
  it('open at the place of use, by a button that says whether they are open', () => {
    keptLength(18, { help: 'Measured with a caliper.', origin: 'measured here' });
    const button = screen.getByRole('button', { name: 'About Thickness' });
    const panel = screen.getByText('Measured with a caliper.');
    expect(button.getAttribute('aria-expanded')).toBe('false');
    expect(panel.hidden).toBe(true);
    fireEvent.click(button);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    expect(button.getAttribute('aria-controls')).toBe(panel.id);
    expect(panel.hidden).toBe(false);
  });

  it('the origin is part of what is said about the field', () => {
    expect(describedBy(keptLength(18, { origin: 'measured here' }).field)).toContain('measured here');
  });
});

describe('angles and plain numbers', () => {
  it('an angle is shown in minutes where that is wanted, and read in either way', () => {
    const onChange = vi.fn();
    render(<AngleField label="Slope" value={22.5} onChange={onChange} angleStyle="minutes" />);
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Slope' });
    expect(field.value).toBe('22°30′');
    type(field, '11.25');
    expect(onChange).toHaveBeenLastCalledWith(11.25);
    type(field, "11°30'");
    expect(onChange).toHaveBeenLastCalledWith(11.5);
  });

  it('a number takes its own unit typed after it, and no other', () => {
    const onChange = vi.fn();
    render(<NumberField label="Setting up" unit="min" value={10} onChange={onChange} />);
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Setting up' });
    type(field, '25 min');
    expect(onChange).toHaveBeenLastCalledWith(25);
    type(field, '30 mm');
    pause();
    expect(onChange).toHaveBeenCalledTimes(1);
    expect(field.getAttribute('aria-invalid')).toBe('true');
  });
});
