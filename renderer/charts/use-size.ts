/** The width of an element and the size of the page's text, both px, so that charts grow with either. */
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export interface Size {
  widthPx: number;
  /** One rem. */
  textPx: number;
}

/** One rem, px. */
export function remPx(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
}

export function useSize<Element extends HTMLElement>(): [RefObject<Element | null>, Size] {
  const element = useRef<Element>(null);
  const [size, setSize] = useState<Size>({ widthPx: 0, textPx: 16 });
  useLayoutEffect(() => {
    const measured = element.current;
    if (!measured) return;
    const measure = (): void => {
      const widthPx = measured.clientWidth;
      const textPx = remPx();
      setSize((size) => (size.widthPx === widthPx && size.textPx === textPx ? size : { widthPx, textPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(measured);
    return () => observer.disconnect();
  }, []);
  return [element, size];
}
