/** Charts, drawings and sheets of the page as an SVG file that stands by itself. */
import { onWhitePaper } from './on-white-paper';
import { type Painted, paintPage } from './paint-page';
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
const TITLE_PX = 18;
const TITLE_ROOM_PX = 40;

/**
 * The parts of a figure but for its caption, under its title.
 *
 * @param parts elements of the page, as they lie there
 * @throws {Error} when nothing of them is to be seen
 */
export function pictureOf(parts: readonly Element[], words: PictureWords): Picture {
  return onWhitePaper(() => {
    const painted = joined(parts.map(paintPage));
    const box = around(painted.boxes);
    const frame = {
      left: box.left - MARGIN_PX,
      top: box.top - MARGIN_PX - TITLE_ROOM_PX,
      width: Math.ceil(box.width + 2 * MARGIN_PX),
      height: Math.ceil(box.height + 2 * MARGIN_PX + TITLE_ROOM_PX),
    };
    const { fontFamily } = getComputedStyle(document.documentElement);
    const heading = svgElement(
      'text',
      {
        x: MARGIN_PX,
        y: MARGIN_PX + TITLE_PX,
        fill: '#1d2125',
        'font-family': fontFamily.replaceAll('"', "'"),
        'font-size': TITLE_PX,
        'font-weight': 600,
      },
      words.title,
    );
    return drawn(painted.shapes, frame, words, [heading]);
  });
}

/** A sheet of paper with its own edges. */
export function pictureOfSheet(sheet: Element, words: PictureWords): Picture {
  return onWhitePaper(() => {
    const { left, top, width, height } = sheet.getBoundingClientRect();
    const frame = { left, top, width: Math.round(width), height: Math.round(height) };
    return drawn(paintPage(sheet).shapes, frame, words, []);
  });
}

function joined(all: readonly Painted[]): Painted {
  return { shapes: all.flatMap(({ shapes }) => shapes), boxes: all.flatMap(({ boxes }) => boxes) };
}

function around(boxes: readonly DOMRect[]): { left: number; top: number; width: number; height: number } {
  const seen = boxes.filter(({ width, height }) => width > 0 || height > 0);
  if (seen.length === 0) throw new Error('There is nothing to be seen yet. Wait until it is drawn.');
  const [left, top] = [Math.min(...seen.map((box) => box.left)), Math.min(...seen.map((box) => box.top))];
  const [right, bottom] = [Math.max(...seen.map((box) => box.right)), Math.max(...seen.map((box) => box.bottom))];
  return { left, top, width: right - left, height: bottom - top };
}

interface Frame {
  left: number;
  top: number;
  width: number;
  height: number;
}

function drawn(shapes: SVGElement[], { left, top, width, height }: Frame, words: PictureWords, over: SVGElement[]) {
  const root = svgElement('svg', { width, height, viewBox: `0 0 ${width} ${height}`, role: 'img' });
  const placed = svgElement('g', { transform: `translate(${(-left).toFixed(2)} ${(-top).toFixed(2)})` });
  placed.append(...shapes);
  root.append(
    svgElement('title', {}, words.title),
    svgElement('desc', {}, words.description),
    svgElement('rect', { width, height, fill: '#ffffff' }),
    ...over,
    placed,
  );
  const svg = `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(root)}\n`;
  return { svg, widthPx: width, heightPx: height };
}
