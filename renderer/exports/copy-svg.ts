/** A drawing of the page, copied so that it looks the same without the page's styles. */
import { paintOf, setAttributes, svgElement } from './svg-attributes';

/** Handed down to what is inside, so that only what differs from there is written. */
const HANDED_DOWN = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-opacity',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'paint-order',
  'font-family',
  'font-size',
  'font-weight',
  'font-style',
  'text-anchor',
] as const;

/** What does not go down, and what it is where nothing is said. */
const OWN: Readonly<Record<string, string>> = {
  opacity: '1',
  'vector-effect': 'none',
  'dominant-baseline': 'auto',
  'clip-path': 'none',
};

type Look = Readonly<Record<string, string>>;

const PAINTS: readonly string[] = ['fill', 'stroke'];
const SHAPES = 'path, rect, circle, line, polyline, polygon, ellipse';
/** Of the page, and of no use without it. */
const OF_THE_PAGE = /^(class|style|role|tabindex|focusable|cursor|pointer-events|name|(aria|data)-.*)$/;

function lookOf(element: Element): Look {
  const style = getComputedStyle(element);
  return Object.fromEntries(HANDED_DOWN.map((name) => [name, style.getPropertyValue(name)]));
}

const isPaint = (name: string): boolean => PAINTS.includes(name);
const plain = (value: string): string => value.replace(/(\d)px\b/g, '$1').replaceAll('"', "'");

function isUnseen(element: Element, look: Look): boolean {
  if (!element.matches(SHAPES)) return false;
  return PAINTS.every((name) => paintOf(look[name] ?? 'none').opacity === 0);
}

function writeLook(copy: Element, look: Look, before: Look): void {
  for (const name of HANDED_DOWN) {
    copy.removeAttribute(name);
    const value = look[name] ?? '';
    if (value === before[name] || value === '') continue;
    if (!isPaint(name)) copy.setAttribute(name, plain(value));
    else copy.setAttribute(name, paintOf(value).opacity === 0 ? 'none' : plain(paintOf(value).colour));
  }
}

function writeOwn(copy: Element, style: CSSStyleDeclaration): void {
  for (const [name, usual] of Object.entries(OWN)) {
    copy.removeAttribute(name);
    const value = style.getPropertyValue(name);
    if (value !== '' && value !== usual) copy.setAttribute(name, plain(value));
  }
}

/** null for what is not seen. */
function copyElement(source: Element, before: Look): Element | null {
  const style = getComputedStyle(source);
  const look = lookOf(source);
  if (style.display === 'none' || style.visibility === 'hidden' || isUnseen(source, look)) return null;
  const copy = source.cloneNode(false) as Element;
  for (const { name } of [...copy.attributes]) if (OF_THE_PAGE.test(name)) copy.removeAttribute(name);
  writeLook(copy, look, before);
  writeOwn(copy, style);
  for (const child of source.childNodes) {
    if (child instanceof Text) copy.append(child.cloneNode());
    // The whole picture has words of its own.
    if (child instanceof SVGElement && !child.matches('title, desc')) copy.append(copyElement(child, look) ?? '');
  }
  return copy;
}

/** @param source a whole drawing on the page; the copy lies where it lies in the window */
export function copySvg(source: SVGSVGElement): SVGElement {
  const nested = (copyElement(source, {}) ?? svgElement('g')) as SVGElement;
  const { left, top, width, height } = source.getBoundingClientRect();
  const overflow = getComputedStyle(source).overflow === 'visible' ? 'visible' : undefined;
  setAttributes(nested, { x: left, y: top, width, height, overflow });
  return nested;
}

/** What a drawing covers on the screen, with what it draws beyond its own edges. */
export function reachOf(source: SVGSVGElement): DOMRect {
  const own = source.getBoundingClientRect();
  const toScreen = source.getScreenCTM();
  if (toScreen === null || getComputedStyle(source).overflow !== 'visible') return own;
  const box = source.getBBox();
  const [left, top] = [toScreen.e + box.x * toScreen.a, toScreen.f + box.y * toScreen.d];
  const [right, bottom] = [left + box.width * toScreen.a, top + box.height * toScreen.d];
  return DOMRect.fromRect({
    x: Math.min(left, own.left),
    y: Math.min(top, own.top),
    width: Math.max(right, own.right) - Math.min(left, own.left),
    height: Math.max(bottom, own.bottom) - Math.min(top, own.top),
  });
}
