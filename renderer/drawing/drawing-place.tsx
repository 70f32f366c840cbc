import type { ReactNode } from 'react';
import type { Piece } from '../../sim/project/document';
import './drawing.css';
import { cannotBeDrawn } from './ring-outline';
import { useDrawnSize } from './use-drawn-size';

interface DrawingPlaceProps {
  piece: Piece;
  widthPx: number | undefined;
  children: (size: { widthPx: number; textPx: number }) => ReactNode;
}

/** The place a drawing of the piece stands in, or the sentence that says why there is none. */
export function DrawingPlace({ piece, widthPx: fixedWidthPx, children }: DrawingPlaceProps) {
  const { ref, widthPx, textPx } = useDrawnSize(fixedWidthPx);
  const sentence = cannotBeDrawn(piece);
  return (
    <div className="drawing" ref={ref}>
      {sentence === undefined ? children({ widthPx, textPx }) : <p className="drawing-missing">{sentence}</p>}
    </div>
  );
}
