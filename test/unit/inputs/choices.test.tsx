// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { ChoiceField } from '../../../renderer/inputs/choice-field';
import type { Display } from '../../../renderer/inputs/field-props';
import { SliderField } from '../../../renderer/inputs/slider-field';

afterEach(cleanup);

type Happened = (string | number)[];

const GRAINS = [
  { value: 'alongRing', label: 'Around the ring' },
  { value: 'upStave', label: 'Up the stave' },
] as const;

function KeptChoice({ happened, layout }: { happened: Happened; layout?: 'row' | 'menu' }) {
  const [value, setValue] = useState<'alongRing' | 'upStave'>('alongRing');
  return (
    <ChoiceField
      label="Grain"
      choices={GRAINS}
      layout={layout}
      value={value}
      onChange={(chosen) => {
        happened.push(chosen);
        setValue(chosen);
      }}
      onGestureStart={() => happened.push('start')}
      onGestureEnd={() => happened.push('end')}
      problem={value === 'upStave' ? 'Staves ripped from a board are always turned over.' : undefined}
    />
  );
}

describe('a choice between few', () => {
  it('is a named group of radio buttons, and choosing is one gesture', () => {
    const happened: Happened = [];
    render(<KeptChoice happened={happened} />);
    expect(screen.getByRole('radiogroup', { name: 'Grain' })).toBeTruthy();
    expect(screen.getByRole<HTMLInputElement>('radio', { name: 'Around the ring' }).checked).toBe(true);
    fireEvent.click(screen.getByRole('radio', { name: 'Up the stave' }));
    expect(happened).toEqual(['start', 'upStave', 'end']);
    expect(screen.getByRole<HTMLInputElement>('radio', { name: 'Up the stave' }).checked).toBe(true);
  });

  it('shows the sentence of a choice that cannot be', () => {
    render(<KeptChoice happened={[]} />);
    fireEvent.click(screen.getByRole('radio', { name: 'Up the stave' }));
    const group = screen.getByRole('radiogroup');
    expect(group.getAttribute('aria-invalid')).toBe('true');
    const ids = (group.getAttribute('aria-describedby') ?? '').split(' ');
    expect(ids.map((id) => document.getElementById(id)?.textContent)).toContain(
      'Staves ripped from a board are always turned over.',
    );
  });
});

describe('a choice between many', () => {
  it('opens as a list from a button that carries label and choice', () => {
    const happened: Happened = [];
    render(<KeptChoice happened={happened} layout="menu" />);
    const button = screen.getByRole('button', { name: 'Around the ring Grain' });
    act(() => button.focus());
    fireEvent.keyDown(button, { key: 'ArrowDown' });
    fireEvent.keyUp(button, { key: 'ArrowDown' });
    expect(screen.getAllByRole('option').map((option) => option.textContent)).toEqual([
      'Around the ring',
      'Up the stave',
    ]);
    fireEvent.click(screen.getByRole('option', { name: 'Up the stave' }));
    expect(happened).toEqual(['start', 'upStave', 'end']);
  });
});

function KeptLimit({ happened, display, first = 0.15 }: { happened: Happened; display: Display; first?: number }) {
  const [value, setValue] = useState(first);
  return (
    <SliderField
      label="Limit"
      kind="length"
      display={display}
      min={0}
      max={1}
      step={0.01}
      value={value}
      onChange={(mm) => {
        happened.push(mm);
        setValue(mm);
      }}
      onGestureStart={() => happened.push('start')}
      onGestureEnd={() => happened.push('end')}
    />
  );
}

const slider = () => screen.getByRole<HTMLInputElement>('slider', { name: 'Limit' });
const typed = () => screen.getByRole<HTMLInputElement>('textbox', { name: 'Limit, typed' });
/** What an arrow key does in a browser: the range input changes, then the key comes up. */
const move = (to: string) => {
  act(() => slider().focus());
  fireEvent.change(slider(), { target: { value: to } });
  fireEvent.keyUp(slider(), { key: 'ArrowRight' });
};

describe('a slider', () => {
  it('gives mm, one gesture a key press, and its field follows', () => {
    const happened: Happened = [];
    render(<KeptLimit happened={happened} display="metric" />);
    move('0.16');
    move('0.17');
    expect(happened).toEqual(['start', 0.16, 'end', 'start', 0.17, 'end']);
    expect(typed().value).toBe('0.17');
  });

  it('moves in even inches where inches are displayed, and gives mm all the same', () => {
    const happened: Happened = [];
    render(<KeptLimit happened={happened} display="inch" />);
    expect(slider().step).toBe('0.0005');
    expect(slider().getAttribute('aria-valuetext')).toContain('inch');
    move('0.01');
    expect(happened).toEqual(['start', 0.254, 'end']);
  });

  it('never moves the figure by showing it, though it lies between two steps or past the end', () => {
    const happened: Happened = [];
    const { unmount } = render(<KeptLimit happened={happened} display="metric" first={0.1234} />);
    expect(typed().value).toBe('0.123');
    unmount();
    render(<KeptLimit happened={happened} display="metric" first={2.5} />);
    expect(typed().value).toBe('2.5');
    expect(happened).toEqual([]);
  });

  it('takes what is typed beside it, also past its ends', () => {
    const happened: Happened = [];
    render(<KeptLimit happened={happened} display="metric" />);
    act(() => typed().focus());
    fireEvent.change(typed(), { target: { value: '1/16 in' } });
    act(() => typed().blur());
    expect(happened).toEqual(['start', 1.5875, 'end']);
    expect(slider().value).toBe('1');
  });
});
