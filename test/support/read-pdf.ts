/** Reads a PDF back: what each page says, how large it is, and what an assistive program finds in it. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  title: string;
  /** Whether it tells headings and paragraphs apart for those who listen. */
  isTagged: boolean;
  /** Titles of the outline's entries, those within others after them. */
  outline: string[];
  pages: ReadPage[];
}

export interface ReadPage {
  widthPt: number;
  heightPt: number;
  /** With every run of blanks and line ends as one blank. */
  text: string;
  /** What the lettering reaches, points from the lower left corner. */
  left: number;
  right: number;
  bottom: number;
  top: number;
  /** Of the fonts that its letters are set in, those that the reader's machine would have to have. */
  fontsNotEmbedded: string[];
  /** Lines and areas that are drawn, and pictures made of dots. */
  paths: number;
  images: number;
}

const IMAGES: readonly number[] = [
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintImageMaskXObject,
  OPS.paintImageXObjectRepeat,
];

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const reading = getDocument({ data: new Uint8Array(bytes), verbosity: 0, fontExtraProperties: true });
  const pdf = await reading.promise;
  try {
    const { info } = (await pdf.getMetadata()) as { info: { Title?: string } };
    const pages = Array.from({ length: pdf.numPages }, (_, k) => readPage(pdf, k + 1));
    return {
      title: info.Title ?? '',
      isTagged: (await pdf.getMarkInfo())?.Marked === true,
      outline: titlesOf(await pdf.getOutline()),
      pages: await Promise.all(pages),
    };
  } finally {
    await reading.destroy();
  }
}

type Pdf = Awaited<ReturnType<typeof getDocument>['promise']>;
type Entry = { title: string; items: Entry[] };

function titlesOf(entries: Entry[] | null): string[] {
  return (entries ?? []).flatMap(({ title, items }) => [title, ...titlesOf(items)]);
}

async function readPage(pdf: Pdf, number: number): Promise<ReadPage> {
  const page = await pdf.getPage(number);
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const { items } = await page.getTextContent();
  const pieces = items.flatMap((item) => ('str' in item ? [item] : []));
  const written = pieces.filter(({ str }) => str.trim() !== '');
  const places = written.map(({ transform, width, height }) => {
    const [x, y] = [Number(transform[4]), Number(transform[5])];
    const isUpright = Math.abs(Number(transform[1])) < 1e-6;
    return { x, y, right: x + (isUpright ? width : 0), top: y + (isUpright ? height : 0) };
  });
  const { fnArray } = await page.getOperatorList();
  const fonts = new Set(pieces.map(({ fontName }) => fontName));
  return {
    widthPt: right - left,
    heightPt: top - bottom,
    text: pieces
      .map(({ str, hasEOL }) => (hasEOL ? `${str} ` : str))
      .join('')
      .replace(/\s+/g, ' '),
    left: Math.min(...places.map(({ x }) => x)),
    right: Math.max(...places.map((place) => place.right)),
    bottom: Math.min(...places.map(({ y }) => y)),
    top: Math.max(...places.map((place) => place.top)),
    fontsNotEmbedded: [...fonts].filter((font) => page.commonObjs.get(font)?.missingFile !== false),
    paths: fnArray.filter((operation) => operation === OPS.constructPath).length,
    images: fnArray.filter((operation) => IMAGES.includes(operation)).length,
  };
}

/** With every blank left out: lines break where they like. */
export const unspaced = (text: string): string => text.replace(/[\s\u00a0]+/g, '');
