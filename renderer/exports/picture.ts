/** Charts, drawings and sheets of the page as an SVG file that stands by itself. */
import { onWhitePaper } from './on-white-paper';
import { paintPage } from './paint-page';
import { svgElement } from './svg-attributes';

export interface Picture {
  svg: string;
  widthPx: number;
  heightPx: number;
}

export interface PictureWords {
  title: string;
  /** What is to be seen, and what it follows from; for those who do not see it. */
  description: string;
}

/** Around what is drawn. */
const MARGIN_PX = 16;
/** Between a caption and what it is about. */
const BETWEEN_PX = 20;

interface Frame {
  left: number;
  top: number;
  width: number;
  height: number;
}

/**
 * @param blocks elements of the page, one under the other; what lies between them on the page and is not pictured leaves
 *   no hole
 * @throws {Error} when nothing of them is to be seen
 */
export function pictureOf(blocks: readonly Element[], words: PictureWords): Picture {
  return onWhitePaper(() => {
    const painted = blocks.map(paintPage).flatMap(({ shapes, boxes }) => {
      const box = around(boxes);
      return box === null ? [] : [{ shapes, box }];
    });
    if (painted.length === 0) throw new Error('There is nothing to be seen yet. Wait until it is drawn.');
    const left = Math.min(...painted.map(({ box }) => box.left));
    const right = Math.max(...painted.map(({ box }) => box.left + box.width));
    let foot = MARGIN_PX - BETWEEN_PX;
    const placed = painted.map(({ shapes, box }) => {
      const top = foot + BETWEEN_PX;
      foot = top + box.height;
      return moved(shapes, MARGIN_PX - left, top - box.top);
    });
    return drawn(placed, Math.ceil(right - left + 2 * MARGIN_PX), Math.ceil(foot + MARGIN_PX), words);
  });
}

/** A sheet of paper with its own edges. */
export function pictureOfSheet(sheet: Element, words: PictureWords): Picture {
  return onWhitePaper(() => {
    const { left, top, width, height } = sheet.getBoundingClientRect();
    return drawn([moved(paintPage(sheet).shapes, -left, -top)], Math.round(width), Math.round(height), words);
  });
}

function around(boxes: readonly DOMRect[]): Frame | null {
  const seen = boxes.filter(({ width, height }) => width > 0 || height > 0);
  if (seen.length === 0) return null;
  const [left, top] = [Math.min(...seen.map((box) => box.left)), Math.min(...seen.map((box) => box.top))];
  const [right, bottom] = [Math.max(...seen.map((box) => box.right)), Math.max(...seen.map((box) => box.bottom))];
  return { left, top, width: right - left, height: bottom - top };
}

function moved(shapes: readonly SVGElement[], x: number, y: number): SVGElement {
  const group = svgElement('g', { transform: `translate(${x.toFixed(2)} ${y.toFixed(2)})` });
  group.append(...shapes);
  return group;
}

function drawn(shapes: readonly SVGElement[], width: number, height: number, words: PictureWords): Picture {
  const root = svgElement('svg', { width, height, viewBox: `0 0 ${width} ${height}`, role: 'img' });
  root.append(
    svgElement('title', {}, words.title),
    svgElement('desc', {}, words.description),
    svgElement('rect', { width, height, fill: '#ffffff' }),
    ...shapes,
  );
  const svg = `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(root)}\n`;
  return { svg, widthPx: width, heightPx: height };
}
