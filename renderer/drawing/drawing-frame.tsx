import { type ReactNode, useId } from 'react';

interface DrawingFrameProps {
  title: string;
  /** What the drawing shows, in words, with its figures. */
  description: string;
  widthPx: number;
  /** Top and bottom of the sheet, px; the top need not be 0. */
  topPx: number;
  bottomPx: number;
  children: ReactNode;
}

/** The sheet of a drawing: an image with a text that says the same. */
export function DrawingFrame({ title, description, widthPx, topPx, bottomPx, children }: DrawingFrameProps) {
  const titleId = useId();
  const descriptionId = useId();
  return (
    <svg
      className="drawing-sheet"
      role="img"
      aria-labelledby={titleId}
      aria-describedby={descriptionId}
      width={widthPx}
      height={bottomPx - topPx}
      viewBox={`0 ${topPx} ${widthPx} ${bottomPx - topPx}`}
    >
      <title id={titleId}>{title}</title>
      <desc id={descriptionId}>{description}</desc>
      {children}
    </svg>
  );
}
