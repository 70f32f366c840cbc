/**
 * How large the client's sheet is set, so that it fills one page. Nothing is measured: a sheet is drawn where there is no
 * screen, so lines are reckoned by the width of lettering, on the wide side of what the typefaces of the sheet need.
 */
import type { Paper } from '../../main/contract/report';

/** What stands on the sheet, each text whole; empty where it is left out. */
export interface ClientWords {
  title: string;
  line: string;
  piece: string;
  why: string;
  caption: string;
  expect: string;
  making: readonly string[];
  /** Heading and text of what stands beside the list. */
  beside: readonly string[];
  remains: string;
  closing: readonly string[];
  foot: string;
}

export interface ClientFit {
  /** Size of the lettering against `TEXT_PX`. */
  scale: number;
  drawingPx: number;
  /** 0 where no dots are drawn. */
  dotsPx: number;
}

/** Between the margins, px. */
const WIDTH_PX = 680;
const MM_PX = 96 / 25.4;
const HEIGHT_PX: Record<Paper, number> = { a4: (297 - 28) * MM_PX, letter: (279.4 - 28) * MM_PX };
/** Size of plain lettering at scale 1; `sheet.css` has the same. */
const TEXT_PX = 13.5;
const LINE = 1.4;
/** Mean width of a letter, and what is lost at the ends of lines, in sizes of the lettering. */
const LETTER = 0.5;
const RAGGED = 3;
const GAP = 1.1;
const COLUMNS_APART_PX = 28;
const HEADING = 1.1 * 1.3 + 0.25;
const DRAWING_PX = 224;
/** The plan of a ring with its sizes below is about as high as wide. */
const DRAWING_ROOM = 1.02;
const LEAST_DOTS_PX = 92;
const MOST_DOTS_PX = 250;
/** From what is still read at arm's length to what looks like a poster. */
const LARGEST = 1.3;
const SMALLEST = 0.74;
const STEP = 0.02;

/** Height of a text, px. */
function textPx(text: string, widthPx: number, sizePx: number): number {
  if (text === '') return 0;
  const lettersInLine = Math.max(1, widthPx / (LETTER * sizePx) - RAGGED);
  const lines = text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / lettersInLine)), 0);
  return lines * LINE * sizePx;
}

/** Height of everything but the dots. */
function restPx(words: ClientWords, drawingPx: number, scale: number): number {
  const size = TEXT_PX * scale;
  const heading = HEADING * size;
  const headed = (text: string, width: number): number => (text === '' ? 0 : heading + textPx(text, width, size));
  const sections: number[] = [];
  const isOneRow = (words.title.length * 1.8 + words.line.length * 1.15) * LETTER * size + 24 < WIDTH_PX;
  const titlePx = textPx(words.title, WIDTH_PX, 1.8 * size);
  sections.push(20 + (isOneRow ? titlePx : titlePx + textPx(words.line, WIDTH_PX, 1.15 * size)));
  const leadPx = drawingPx === 0 ? WIDTH_PX : WIDTH_PX - drawingPx - COLUMNS_APART_PX;
  const leadWords = textPx(words.piece, leadPx, 1.1 * size) + 0.9 * size + headed(words.why, leadPx);
  sections.push(Math.max(drawingPx * DRAWING_ROOM, leadWords));
  const captionPx = textPx(words.caption, WIDTH_PX, 0.88 * size) + 10;
  sections.push(heading + (words.caption === '' ? 0 : captionPx) + textPx(words.expect, WIDTH_PX, 1.1 * size));
  sections.push(columnsPx(words, size, heading));
  sections.push(headed(words.remains, WIDTH_PX));
  const closing = words.closing.map((text) => textPx(text, WIDTH_PX, 1.05 * size) + 0.5 * size);
  sections.push(closing.length === 0 ? 0 : 10 + closing.reduce((a, b) => a + b, 0));
  sections.push(8 + textPx(words.foot, WIDTH_PX, 0.82 * size));
  const shown = sections.filter((px) => px > 0);
  return shown.reduce((a, b) => a + b, 0) + (shown.length - 1) * GAP * size;
}

/** Two columns whose blocks stay whole: at best half of all, at worst the longest block. */
function columnsPx({ making, beside }: ClientWords, size: number, heading: number): number {
  const width = (WIDTH_PX - COLUMNS_APART_PX) / 2;
  const list = making.map((text) => textPx(text, width - 12, size) + 3);
  const blocks = [
    ...(list.length === 0 ? [] : [heading + list.reduce((a, b) => a + b, 0) + 0.8 * size]),
    ...beside.map((text) => heading + textPx(text, width, size) + 0.8 * size),
  ];
  if (blocks.length === 0) return 0;
  const others = blocks.slice(1).reduce((a, b) => a + b, 0);
  return Math.max(blocks[0] ?? 0, others);
}

/** The largest lettering with which all fits, and what is then left for the dots. */
export function clientFit(words: ClientWords, paper: Paper, has: { drawing: boolean; dots: boolean }): ClientFit {
  const heightPx = HEIGHT_PX[paper];
  const at = (scale: number): ClientFit & { leftPx: number } => {
    const drawingPx = has.drawing ? Math.round(DRAWING_PX * Math.min(1.15, scale)) : 0;
    const leftPx = heightPx - restPx(words, drawingPx, scale);
    const dotsPx = has.dots ? Math.round(Math.min(MOST_DOTS_PX, Math.max(LEAST_DOTS_PX, leftPx))) : 0;
    return { scale, drawingPx, dotsPx, leftPx: leftPx - dotsPx };
  };
  let scale = LARGEST;
  // Dots grow before the lettering does.
  while (scale > SMALLEST && at(scale).leftPx < 0) scale -= STEP;
  while (has.dots && scale > 1 && at(scale).dotsPx < 150) scale -= STEP;
  const { leftPx: _, ...fit } = at(Number(scale.toFixed(2)));
  return fit;
}
