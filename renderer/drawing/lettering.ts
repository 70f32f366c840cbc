/** How a drawing writes its figures. */
import { aboutLengthText, angleText, lengthText } from '../../sim/wording/figures';
import type { SizedDrawing } from './drawing-props';

export interface Lettering {
  textPx: number;
  /** Width of the sheet that is written on, px. */
  widthPx: number;
  figure: (mm: number) => string;
  angle: (deg: number) => string;
  /** Room a line of lettering takes, px. */
  measure: (text: string) => number;
}

/** Room a line of lettering takes, px, on the wide side of what most typefaces need. */
export function letteringPx(text: string, textPx: number): number {
  return text.length * textPx * 0.6;
}

export function letteringOf({ display, fractions, isRounded, angleStyle, textPx, widthPx }: SizedDrawing): Lettering {
  return {
    textPx,
    widthPx,
    figure: (mm) =>
      isRounded === true ? aboutLengthText(mm, display) : lengthText(mm, display, { fractions: fractions === true }),
    angle: (deg) => angleText(deg, angleStyle),
    measure: (text) => letteringPx(text, textPx),
  };
}
