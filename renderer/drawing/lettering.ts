/** How a drawing writes its figures. */
export interface Lettering {
  textPx: number;
  figure: (mm: number) => string;
  angle: (deg: number) => string;
  /** Room a line of lettering takes, px. */
  measure: (text: string) => number;
}
