/**
 * Writes the program's icon for every system from the picture that the pages carry:
 * `node main/icons/draw.mjs` renews icon.png, icon.ico and icon.icns in this folder.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { findChromium } from '../chromium.mjs';

const PICTURE = fileURLToPath(new URL('../../renderer/app/ring.svg', import.meta.url));

/** @param {string} name @param {string | Buffer} contents */
function write(name, contents) {
  writeFileSync(fileURLToPath(new URL(name, import.meta.url)), contents);
}

/**
 * Windows: a folder of sixteen-byte entries, then the pictures, which may be PNG since Vista.
 *
 * @param {Map<number, Buffer>} pictures by width
 * @returns {Buffer}
 */
function ico(pictures) {
  const folder = Buffer.alloc(6 + 16 * pictures.size);
  folder.writeUInt16LE(1, 2);
  folder.writeUInt16LE(pictures.size, 4);
  let offset = folder.length;
  [...pictures].forEach(([width, png], place) => {
    const at = 6 + 16 * place;
    folder.writeUInt8(width % 256, at);
    folder.writeUInt8(width % 256, at + 1);
    folder.writeUInt16LE(1, at + 4);
    folder.writeUInt16LE(32, at + 6);
    folder.writeUInt32LE(png.length, at + 8);
    folder.writeUInt32LE(offset, at + 12);
    offset += png.length;
  });
  return Buffer.concat([folder, ...pictures.values()]);
}

/**
 * macOS: named blocks, each with its length, of PNG pictures.
 *
 * @param {Map<string, Buffer>} pictures by block name
 * @returns {Buffer}
 */
function icns(pictures) {
  const blocks = [...pictures].map(([name, png]) => block(name, png));
  return block('icns', Buffer.concat(blocks));
}

/** @param {string} name @param {Buffer} contents @returns {Buffer} */
function block(name, contents) {
  const head = Buffer.alloc(8);
  head.write(name, 'ascii');
  head.writeUInt32BE(contents.length + 8, 4);
  return Buffer.concat([head, contents]);
}

const svg = readFileSync(PICTURE, 'utf8');
const program = findChromium();
const browser = await chromium.launch(program ? { executablePath: program, args: ['--no-sandbox'] } : {});
const page = await browser.newPage();
/** @param {number} width @returns {Promise<Buffer>} */
async function png(width) {
  await page.setViewportSize({ width, height: width });
  await page.setContent(
    `<style>html,body{margin:0}svg{display:block;width:${width}px;height:${width}px}</style>${svg}`,
  );
  return page.screenshot({ omitBackground: true });
}
/** @type {Map<number, Buffer>} */
const drawn = new Map();
for (const width of [16, 24, 32, 48, 64, 128, 256, 512, 1024]) drawn.set(width, await png(width));
await browser.close();

/** @param {number} width @returns {Buffer} */
function at(width) {
  const found = drawn.get(width);
  if (!found) throw new Error(`No picture ${width} wide was drawn.`);
  return found;
}

write('icon.png', at(512));
write('icon.ico', ico(new Map([16, 24, 32, 48, 64, 128, 256].map((width) => [width, at(width)]))));
const blocks = { icp4: 16, icp5: 32, ic07: 128, ic08: 256, ic09: 512, ic10: 1024 };
write('icon.icns', icns(new Map(Object.entries(blocks).map(([name, width]) => [name, at(width)]))));
