/** A part of the page as shapes and words of a drawing, each where it lies in the window. */
import { copySvg, reachOf } from './copy-svg';
import { paintBox } from './paint-box';
import { paintOf, svgElement } from './svg-attributes';
import { lettersOf, type TextLine, textLines } from './text-lines';

/** What can be acted on, and what is there for those who listen only. */
export const LEFT_OUT =
  'button, input, select, textarea, label, details, .field, .work-mark, .spoken, [data-not-pictured]';

export interface Painted {
  shapes: SVGElement[];
  /** What they cover. */
  boxes: DOMRect[];
}

export function paintPage(element: Element): Painted {
  const painted: Painted = { shapes: [], boxes: [] };
  paint(element, painted);
  return painted;
}

function isHidden(style: CSSStyleDeclaration): boolean {
  return style.display === 'none' || style.visibility === 'hidden' || style.clipPath.startsWith('inset(50%');
}

function paint(element: Element, into: Painted): void {
  if (element.matches(LEFT_OUT)) return;
  const style = getComputedStyle(element);
  if (isHidden(style)) return;
  const own: Painted = { shapes: [], boxes: into.boxes };
  if (element instanceof SVGSVGElement) {
    own.shapes.push(copySvg(element));
    own.boxes.push(reachOf(element));
  } else {
    paintElement(element, style, own);
  }
  const opacity = Number(style.opacity);
  // A drawing brings its own.
  if (opacity === 1 || element instanceof SVGSVGElement) into.shapes.push(...own.shapes);
  else if (own.shapes.length > 0) {
    const group = svgElement('g', { opacity });
    group.append(...own.shapes);
    into.shapes.push(group);
  }
}

function paintElement(element: Element, style: CSSStyleDeclaration, into: Painted): void {
  const box = element.getBoundingClientRect();
  const shapes = paintBox(style, box);
  if (shapes.length > 0) into.boxes.push(box);
  into.shapes.push(...shapes, ...markBefore(element, style, box));
  for (const child of element.childNodes) {
    if (child instanceof Element) paint(child, into);
    if (!(child instanceof Text)) continue;
    for (const line of textLines(child, style)) {
      into.shapes.push(textElement(line, style));
      into.boxes.push(DOMRect.fromRect({ ...line, x: line.left, y: line.top, ...sizeOf(line) }));
    }
  }
}

const sizeOf = ({ left, right, top, bottom }: TextLine) => ({ width: right - left, height: bottom - top });

/** Words set about a place stay about it where another font makes them wider or narrower. */
function textElement({ text, left, right, baseline }: TextLine, style: CSSStyleDeclaration): SVGElement {
  const isCentred = style.textAlign === 'center' || style.translate.startsWith('-50%');
  const isAtEnd = style.textAlign === 'right' || style.textAlign === 'end';
  const [x, anchor] = isCentred ? [(left + right) / 2, 'middle'] : isAtEnd ? [right, 'end'] : [left, undefined];
  return svgElement(
    'text',
    {
      x,
      y: baseline,
      fill: paintOf(style.color).colour,
      'font-family': style.fontFamily.replaceAll('"', "'"),
      'font-size': style.fontSize.replace('px', ''),
      'font-weight': style.fontWeight === '400' ? undefined : style.fontWeight,
      'font-style': style.fontStyle === 'normal' ? undefined : style.fontStyle,
      'text-anchor': anchor,
    },
    text,
  );
}

/** The dash that stands before an item of a list, which is no text of the page. */
function markBefore(element: Element, style: CSSStyleDeclaration, box: DOMRect): SVGElement[] {
  const before = getComputedStyle(element, '::before');
  const [, text = ''] = /^"([^"\\]+)"/.exec(before.content) ?? [];
  if (text === '') return [];
  const lineHeight = Number.parseFloat(style.lineHeight) || 1.2 * Number.parseFloat(style.fontSize);
  const { upPx, downPx } = lettersOf(before);
  // Letters stand in the middle of their line.
  const middle = box.top + Number.parseFloat(style.paddingTop) + lineHeight / 2;
  const baseline = middle + (upPx - downPx) / 2;
  const left = box.left + Number.parseFloat(style.paddingLeft);
  return [textElement({ text, left, right: left, top: box.top, bottom: box.top, baseline }, before)];
}
