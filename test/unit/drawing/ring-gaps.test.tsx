// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { RingGaps } from '../../../renderer/drawing/ring-gaps';
import type { Piece } from '../../../sim/project/document';
import type { JointOpening } from '../../../sim/run/single-ring';

afterEach(cleanup);

const LIMITS = { showGapMm: 0.15, hiddenGapMm: 0.3, remedyGapMm: 0.6 };

function piece(sides: number): Piece {
  return {
    sides,
    slopeDeg: 0,
    grain: 'alongRing',
    size: { by: 'outsideFlats', mm: 280 },
    heightMm: 120,
    thicknessMm: 15,
    showFace: 'outside',
  };
}

/** Joint k stands open by k hundredths of a millimetre outside and touches inside. */
const openings = (sides: number): JointOpening[] =>
  Array.from({ length: sides }, (_, k) => ({ outerMm: k / 100, innerMm: 0 }));

function Ring({ sides, joints = openings(sides) }: { sides: number; joints?: JointOpening[] }) {
  const [marked, setMarked] = useState(0);
  return (
    <RingGaps
      piece={piece(sides)}
      limits={LIMITS}
      joints={joints}
      exaggeration={50}
      marked={marked}
      onMark={setMarked}
      title="Joints of the ring"
      wordsFor={(joint) => `Joint ${joint + 1}`}
      figure={(mm) => mm.toFixed(2)}
      widthPx={480}
    />
  );
}

const joint = (number: number) => screen.getByRole('option', { name: `Joint ${number}` });
const press = (key: string) => fireEvent.keyDown(document.activeElement ?? document.body, { key });

test('the arrow keys walk around the ring and over its seam, Home and End to its ends', () => {
  render(<Ring sides={8} />);
  joint(1).focus();
  press('ArrowRight');
  expect(document.activeElement).toBe(joint(2));
  expect(joint(2).getAttribute('aria-selected')).toBe('true');
  press('ArrowLeft');
  press('ArrowLeft');
  expect(document.activeElement).toBe(joint(8));
  press('ArrowDown');
  expect(document.activeElement).toBe(joint(1));
  press('End');
  expect(document.activeElement).toBe(joint(8));
  press('Home');
  expect(document.activeElement).toBe(joint(1));
});

test('one joint alone can be reached by Tab, the one that is marked', () => {
  render(<Ring sides={8} />);
  fireEvent.pointerEnter(joint(5));
  const reachable = screen.getAllByRole('option').filter((option) => option.getAttribute('tabindex') === '0');
  expect(reachable).toEqual([joint(5)]);
});

test('a joint over the limit is set apart, one at the limit is not', () => {
  render(<Ring sides={20} />);
  const over = screen.getAllByRole('option').filter((option) => option.classList.contains('over'));
  expect(over.map((option) => option.getAttribute('aria-label'))).toEqual([17, 18, 19, 20].map((k) => `Joint ${k}`));
});

test('a side that touches has its dot: both sides of the first joint, the inner side of the others', () => {
  render(<Ring sides={8} />);
  expect(joint(1).querySelectorAll('.gap-touch')).toHaveLength(2);
  expect(joint(2).querySelectorAll('.gap-touch')).toHaveLength(1);
});

test('each joint of a small ring carries its gap as a figure, of a large one only the marked', () => {
  const { rerender } = render(<Ring sides={8} />);
  expect(document.querySelectorAll('.gap-figure')).toHaveLength(8);
  rerender(<Ring sides={60} />);
  expect(document.querySelectorAll('.gap-figure')).toHaveLength(1);
});

test('even the largest ring is drawn with at most 400 marks', () => {
  const { container } = render(<Ring sides={60} joints={openings(60).map(() => ({ outerMm: 0, innerMm: 0 }))} />);
  const marks = [...container.querySelectorAll('path, circle, text, rect, line')].filter(
    (mark) => !mark.matches('.gap-reach'),
  );
  expect(marks.length).toBeLessThanOrEqual(400);
});
