/** The words of the page as they stand on the screen, line by line, for a picture that breaks no lines itself. */
export interface TextLine {
  text: string;
  /** Of the letters, in the window's pixels. */
  left: number;
  right: number;
  baseline: number;
  top: number;
  bottom: number;
}

interface Piece {
  text: string;
  box: DOMRect;
  /** Whether a blank stands before it where it does not begin a line. */
  isApart: boolean;
}

/** A no-break space is part of its word. */
const WORD = /[^ \t\r\n]+/g;

function boxOf(node: Text, from: number, to: number): DOMRectList {
  const range = document.createRange();
  range.setStart(node, from);
  range.setEnd(node, to);
  return range.getClientRects();
}

/** Words; those broken over two lines letter by letter. */
function piecesOf(node: Text): Piece[] {
  return [...node.data.matchAll(WORD)].flatMap(({ 0: word, index }): Piece[] => {
    const [box, another] = boxOf(node, index, index + word.length);
    if (box === undefined) return [];
    if (another === undefined) return [{ text: word, box, isApart: true }];
    return [...word].flatMap((text, place): Piece[] => {
      const at = index + [...word].slice(0, place).join('').length;
      const [letter] = boxOf(node, at, at + text.length);
      return letter ? [{ text, box: letter, isApart: place === 0 }] : [];
    });
  });
}

const measuring = document.createElement('canvas').getContext('2d');

/** How high letters of a style reach over the line and how deep under it. */
export function lettersOf({ fontStyle, fontWeight, fontSize, fontFamily }: CSSStyleDeclaration) {
  if (measuring === null) throw new Error('This browser cannot measure letters.');
  measuring.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
  const { fontBoundingBoxAscent: upPx, fontBoundingBoxDescent: downPx } = measuring.measureText('x');
  return { upPx, downPx };
}

/** @param style of the element around the text */
export function textLines(node: Text, style: CSSStyleDeclaration): TextLine[] {
  const { upPx, downPx } = lettersOf(style);
  const rise = upPx / (upPx + downPx);
  const lines: TextLine[] = [];
  for (const { text, box, isApart } of piecesOf(node)) {
    const line = lines.at(-1);
    if (line && Math.abs(box.top - line.top) < box.height / 2) {
      line.text += isApart ? ` ${text}` : text;
      line.right = box.right;
    } else {
      const { left, right, top, bottom, height } = box;
      lines.push({ text, left, right, top, bottom, baseline: top + rise * height });
    }
  }
  return lines;
}
