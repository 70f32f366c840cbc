import type { Page } from '@playwright/test';

export interface ReadSvg {
  /** Why it is no XML; null when it is. */
  problem: string | null;
  widthPx: number;
  heightPx: number;
  title: string;
  description: string;
  /** The ground behind everything. */
  ground: string;
  /** What leans on something outside the file: styles, classes, addresses. */
  leans: string[];
  /** Its words as they are drawn, and what paints they are drawn in. */
  words: string[];
  inks: string[];
}

/** Reads an SVG file as a program does that knows nothing of the page. */
export function readSvg(page: Page, text: string): Promise<ReadSvg> {
  return page.evaluate((xml) => {
    const read = new DOMParser().parseFromString(xml, 'image/svg+xml');
    const problem = read.querySelector('parsererror')?.textContent ?? null;
    const root = read.documentElement;
    const all = [...root.querySelectorAll('*'), root];
    const leans = all.flatMap((element) =>
      [...element.attributes].flatMap(({ name, value }) => {
        const isOfPage = /^(class|style|on.*)$/.test(name);
        const isOutside = /(^|:)(href|src)$/.test(name) || /var\(|url\((?!['"]?#)|currentcolor|light-dark/i.test(value);
        return isOfPage || isOutside ? [`${element.nodeName} ${name}="${value}"`] : [];
      }),
    );
    for (const name of ['style', 'script', 'image', 'foreignObject']) if (root.querySelector(name)) leans.push(name);
    const drawn = [...root.querySelectorAll('text')];
    const inkOf = (element: Element | null): string =>
      element === null ? '' : (element.getAttribute('fill') ?? inkOf(element.parentElement));
    return {
      problem: root.namespaceURI === 'http://www.w3.org/2000/svg' ? problem : 'The root is no SVG.',
      widthPx: Number(root.getAttribute('width')),
      heightPx: Number(root.getAttribute('height')),
      title: root.querySelector(':scope > title')?.textContent ?? '',
      description: root.querySelector(':scope > desc')?.textContent ?? '',
      ground: root.querySelector(':scope > rect')?.getAttribute('fill') ?? '',
      leans,
      words: drawn.map((element) => element.textContent ?? ''),
      inks: [...new Set(drawn.map(inkOf))],
    };
  }, text);
}

export interface ReadPng {
  widthPx: number;
  heightPx: number;
  /** How many colours it has, and the one in its corner. */
  colours: number;
  corner: number[];
}

/** PNG, "Portable Network Graphics (PNG) Specification (Second Edition)", sections 5.2 and 11.2.2. */
const SIGNATURE = '89504e470d0a1a0a';
const HEADER = '0000000d49484452';

/** @throws {Error} when it does not begin as a PNG does */
export async function readPng(page: Page, bytes: Buffer): Promise<ReadPng> {
  if (bytes.subarray(0, 8).toString('hex') !== SIGNATURE) throw new Error('It has no signature of a PNG.');
  if (bytes.subarray(8, 16).toString('hex') !== HEADER) throw new Error('It has no header of a PNG.');
  const [widthPx, heightPx] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const seen = await page.evaluate(
    async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      const context = canvas.getContext('2d');
      if (!context) throw new Error('This browser cannot draw.');
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
      return { colours: new Set(new Uint32Array(data.buffer)).size, corner: [...data.subarray(0, 4)] };
    },
    `data:image/png;base64,${bytes.toString('base64')}`,
  );
  return { widthPx, heightPx, ...seen };
}
