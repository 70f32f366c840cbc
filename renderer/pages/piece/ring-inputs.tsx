/** The ring itself: sides, slope, size, staves, and what must fit inside. */

import { useState } from 'react';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { Grain, ShowFace, SizeBy } from '../../../sim/project/document';
import { ChoiceField } from '../../inputs/choice-field';
import type { Choice } from '../../inputs/field-props';
import { SliderField } from '../../inputs/slider-field';
import { NumberAt } from '../../parts/number-at';
import { beginGesture, edit, endGesture, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { useProblemAt } from '../../state/problems';
import { useView } from '../../state/view-store';
import { chooseGrain } from './choose-grain';

const SIZES: readonly Choice<SizeBy>[] = [
  { value: 'outsideFlats', label: 'Across the outside flats' },
  { value: 'outsideCorners', label: 'Across the outside corners' },
  { value: 'clearOpening', label: 'Clear opening, narrow end' },
  { value: 'staveWidth', label: 'Stave width, wide end' },
];

const FACES: readonly Choice<ShowFace>[] = [
  { value: 'outside', label: 'Outside' },
  { value: 'inside', label: 'Inside' },
  { value: 'both', label: 'Both' },
];

const GRAINS: readonly Choice<Grain>[] = [
  { value: 'alongRing', label: 'Around the ring', note: 'staves crosscut from a strip' },
  { value: 'upStave', label: 'Up the stave', note: 'staves ripped from a board' },
];

export function RingInputs() {
  const piece = useDocument((state) => state.project.piece);
  const [said, setSaid] = useState('');
  const angleStyle = useView((view) => view.angleStyle);
  const set = (patch: Parameters<typeof withSection<'piece'>>[1]): void => edit(withSection('piece', patch));
  const gesture = { onGestureStart: beginGesture, onGestureEnd: endGesture };
  /** The same ring, described by another of its dimensions. */
  const chooseSize = (by: SizeBy): void => set({ size: { by, mm: sizeOf(by) } });
  const sizeOf = (by: SizeBy): number => {
    const { outsideFlatsMm, outsideCornersMm, clearOpeningNarrowMm, staveWidthMm } = ringGeometry(piece);
    const sizes: Record<SizeBy, number> = {
      outsideFlats: outsideFlatsMm,
      outsideCorners: outsideCornersMm,
      clearOpening: clearOpeningNarrowMm,
      staveWidth: staveWidthMm,
    };
    return Number(sizes[by].toFixed(4));
  };
  return (
    <fieldset className="group">
      <legend>The ring</legend>
      <SliderField
        kind="number"
        label="Sides"
        value={piece.sides}
        min={3}
        max={24}
        step={1}
        problem={useProblemAt('piece.sides')}
        onChange={(sides) => set({ sides })}
        {...gesture}
      />
      <SliderField
        kind="angle"
        angleStyle={angleStyle}
        label="Slope from upright"
        help="0° is an upright vessel, 90° a flat frame."
        value={piece.slopeDeg}
        min={0}
        max={90}
        step={1}
        problem={useProblemAt('piece.slopeDeg')}
        onChange={(slopeDeg) => set({ slopeDeg })}
        {...gesture}
      />
      <ChoiceField label="Size known by" layout="menu" value={piece.size.by} choices={SIZES} onChange={chooseSize} />
      <NumberAt
        path="piece.size.mm"
        label={SIZES.find(({ value }) => value === piece.size.by)?.label ?? 'Size'}
        value={piece.size.mm}
        onChange={(mm) => set({ size: { by: piece.size.by, mm } })}
      />
      <NumberAt
        path="piece.heightMm"
        label="Height along the face"
        help="In a flat frame this is the width of its members."
        value={piece.heightMm}
        onChange={(heightMm) => set({ heightMm })}
      />
      <NumberAt
        path="piece.thicknessMm"
        label="Thickness"
        value={piece.thicknessMm}
        onChange={(thicknessMm) => set({ thicknessMm })}
      />
      <ChoiceField
        label="Face that shows"
        value={piece.showFace}
        choices={FACES}
        onChange={(showFace) => set({ showFace })}
      />
      <ChoiceField
        label="Grain"
        layout="column"
        value={piece.grain}
        choices={GRAINS}
        problem={useProblemAt('piece.grain')}
        onChange={(grain) => chooseGrain(grain, setSaid)}
      />
      <p role="status" className="note">
        {piece.grain === 'upStave' && said}
      </p>
    </fieldset>
  );
}
