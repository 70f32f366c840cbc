/** The ring itself: sides, slope, size, staves, and what must fit inside. */

import { useState } from 'react';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { SizeBy } from '../../../sim/project/document';
import { labelOnPage, optionLabel } from '../../../sim/project/fields';
import { PIECE } from '../../../sim/project/piece-keys';
import { SliderField } from '../../inputs/slider-field';
import { ChoiceAt, NumberAt } from '../../parts/field-at';
import { beginGesture, edit, endGesture, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { useProblemAt } from '../../state/problems';
import { useView } from '../../state/view-store';
import { chooseGrain } from './choose-grain';

/** What a flat frame calls two of its sizes. */
const FLAT_SIZES: Partial<Record<SizeBy, string>> = {
  clearOpening: 'Clear opening',
  staveWidth: 'Member length, outer edge',
};

export function RingInputs() {
  const piece = useDocument((state) => state.project.piece);
  const [said, setSaid] = useState('');
  const isFlat = piece.slopeDeg === 90;
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
        label={labelOnPage(PIECE.keys.sides)}
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
        label={labelOnPage(PIECE.keys.slopeDeg)}
        help={PIECE.keys.slopeDeg.help}
        value={piece.slopeDeg}
        min={0}
        max={90}
        step={1}
        problem={useProblemAt('piece.slopeDeg')}
        onChange={(slopeDeg) => set({ slopeDeg })}
        {...gesture}
      />
      <ChoiceAt path="piece.size.by" layout="menu" value={piece.size.by} onChange={chooseSize} />
      <NumberAt
        path="piece.size.mm"
        label={(isFlat ? FLAT_SIZES[piece.size.by] : undefined) ?? optionLabel(PIECE.keys.size.keys.by, piece.size.by)}
        value={piece.size.mm}
        onChange={(mm) => set({ size: { by: piece.size.by, mm } })}
      />
      <NumberAt
        path="piece.heightMm"
        {...(isFlat
          ? { label: 'Member width', help: 'Along the face of a member, from its outer to its inner edge.' }
          : {})}
        value={piece.heightMm}
        onChange={(heightMm) => set({ heightMm })}
      />
      <NumberAt path="piece.thicknessMm" value={piece.thicknessMm} onChange={(thicknessMm) => set({ thicknessMm })} />
      <ChoiceAt path="piece.showFace" value={piece.showFace} onChange={(showFace) => set({ showFace })} />
      <ChoiceAt
        path="piece.grain"
        layout="column"
        value={piece.grain}
        onChange={(grain) => chooseGrain(grain, setSaid)}
      />
      <p role="status" className="note">
        {piece.grain === 'upStave' && said}
      </p>
    </fieldset>
  );
}
