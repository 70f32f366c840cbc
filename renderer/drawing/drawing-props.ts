import type { Piece } from '../../sim/project/document';
import type { GeometrySummary } from '../../sim/run/prediction';
import type { AngleStyle, LengthStyle } from '../inputs/field-props';

/** What every drawing takes. Without `geometry` it is worked out from the piece, which must then be one that can exist. */
export interface DrawingProps extends LengthStyle {
  piece: Piece;
  geometry?: GeometrySummary | undefined;
  angleStyle?: AngleStyle | undefined;
}
