import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export interface DrawnSize {
  ref: RefObject<HTMLDivElement | null>;
  widthPx: number;
  /** Height of the lettering, which follows the reader's text size and not the width of the drawing. */
  textPx: number;
}

const UNMEASURED = { widthPx: 480, textPx: 13 };

/** Measures the place a drawing stands in, and again whenever it changes; `fixedWidthPx` overrides it. */
export function useDrawnSize(fixedWidthPx: number | undefined): DrawnSize {
  const ref = useRef<HTMLDivElement>(null);
  const [measured, setMeasured] = useState(UNMEASURED);
  useLayoutEffect(() => {
    const place = ref.current;
    if (!place) return;
    const measure = () => {
      const textPx = Number.parseFloat(getComputedStyle(place).fontSize) || UNMEASURED.textPx;
      const widthPx = Math.floor(place.clientWidth) || UNMEASURED.widthPx;
      setMeasured((last) => (last.widthPx === widthPx && last.textPx === textPx ? last : { widthPx, textPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(place);
    return () => observer.disconnect();
  }, []);
  return { ref, widthPx: fixedWidthPx ?? measured.widthPx, textPx: measured.textPx };
}
