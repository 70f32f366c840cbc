import type { Piece } from '../../sim/project/document';
import type { AngleStyle, LengthStyle } from '../inputs/field-props';

/** What every drawing takes. A piece that cannot exist is answered with a sentence in place of the drawing. */
export interface DrawingProps extends LengthStyle {
  piece: Piece;
  /** Figures as a person would say them. */
  isRounded?: boolean | undefined;
  angleStyle?: AngleStyle | undefined;
  /** Left out: as wide as the place it stands in. */
  widthPx?: number | undefined;
}

/** A drawing whose place has been measured. */
export interface SizedDrawing extends DrawingProps {
  widthPx: number;
  textPx: number;
}
