import { gapText, shareWithInterval } from '../../sim/wording/figures';
import { type ReadTable, readTable } from '../../test/support/read-csv';
import { expect, test } from '../support/app';
import { brokenRules } from '../support/broken-rules';
import { projectFile } from '../support/project-file';
import { readPng, readSvg } from '../support/read-picture';
import { chooseSave, figuresTable, settled, showPage, workedOut } from '../support/screen';

test.describe.configure({ timeout: 360_000 });

const TITLE = 'Lantern, "oak"';
const RINGS = 3000;
const CURVE = 'Chance of a good piece against the limit';
const WHITE = [255, 255, 255, 255];
/** Lines, letters and their soft edges have far more; a blank sheet has one. */
const FEW_COLOURS = 20;

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();

/** "83 in 100 (81 to 85)" from the three figures of a share. */
function shareOf(figures: readonly string[]): string {
  // A hundredth of it in binary may be off in the last bit, which decides about rounding.
  const [value, low, high] = figures.map((figure) => Number((Number(figure) / 100).toPrecision(12)));
  return shareWithInterval({ value: value ?? Number.NaN, low: low ?? Number.NaN, high: high ?? Number.NaN });
}

function column({ heads, rows }: ReadTable, head: string): string[] {
  const place = heads.indexOf(head);
  expect(place, head).toBeGreaterThanOrEqual(0);
  return rows.map((row) => row[place] ?? '');
}

test('each kind of file is saved, stands by itself and says what the screen says', async ({
  blank: page,
  openApp,
  desk,
}, info) => {
  // Pictures are for paper: a dark window makes no dark ones.
  await page.emulateMedia({ colorScheme: 'dark' });
  await openApp(page, { file: projectFile(info, TITLE, RINGS) });
  await settled(page);
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const dark = await ground();
  const taken = async (what: string, kind: string, name: string): Promise<Buffer> =>
    (await desk.takeFile(page, () => chooseSave(page, what, kind), info.outputPath(name))).bytes;

  await test.step('a chart’s table', async () => {
    const curve = readTable((await taken(CURVE, 'CSV', 'curve.csv')).toString('utf8'));
    expect(curve.origin).toMatchObject({ Project: TITLE, Table: CURVE, Seed: '7' });
    expect(curve.origin.Program).toMatch(/^Ringtrue \d+\.\d+\.\d+$/);
    expect(curve.units).toEqual(['mm', ...Array(12).fill('in 100')]);
    await page.getByText(`${CURVE}, as a table`, { exact: true }).click();
    const twin = page.getByRole('region', { name: `${CURVE}, as a table` }).getByRole('row');
    const shown = (await twin.allInnerTexts()).slice(1).map((row) => row.split('\t').map(plain));
    const saved = new Map(
      curve.rows.map(([limit, ...shares]) => [
        gapText(Number(limit), 'metric'),
        [0, 3, 6, 9].map((at) => shareOf(shares.slice(at, at + 3))),
      ]),
    );
    expect(shown.length).toBeGreaterThan(2);
    for (const [limit = '', ...shares] of shown) expect(saved.get(limit), limit).toEqual(shares);
  });

  await test.step('the main table, and the prediction', async () => {
    const methods = readTable((await taken('Method by method', 'CSV', 'methods.csv')).toString('utf8'));
    const prediction = JSON.parse((await taken('Method by method', 'JSON', 'prediction.json')).toString('utf8'));
    expect(prediction).toMatchObject({ format: 'ringtrue-prediction', version: 1, title: TITLE, seed: 7 });
    const rows = await figuresTable(page).getByRole('row').all();
    for (const [k, row] of rows.slice(1).entries()) {
      const cells = (await row.getByRole('cell').allInnerTexts()).map(plain);
      const [name, trials, ...figures] = methods.rows[k] ?? [];
      expect(await row.getByRole('rowheader').textContent()).toContain(name);
      expect(trials).toBe(`${RINGS}`);
      expect(cells[0]).toBe(shareOf(figures.slice(0, 3)));
      expect(cells[2]).toBe(shareOf(figures.slice(6, 9)));
      expect(prediction.methods[k]).toMatchObject({ name, trials: RINGS, showGapMm: { p95: Number(figures[3]) } });
      expect(cells[0]).toBe(shareWithInterval(prediction.methods[k].yield));
    }
  });

  await test.step('a chart as drawing and picture', async () => {
    const svg = await readSvg(page, (await taken(CURVE, 'SVG', 'curve.svg')).toString('utf8'));
    expect(svg).toMatchObject({ problem: null, title: CURVE, ground: '#ffffff', leans: [] });
    expect(svg.description).toContain(`${TITLE}, seed 7, Ringtrue`);
    const words = svg.words.join(' ');
    for (const word of [CURVE, 'Marked line', 'Glued one by one', '0.15 mm', '100']) expect(words).toContain(word);
    for (const left of [words, svg.description]) expect(left).not.toMatch(/Save|Drag/);
    // Dark letters, or white ones on the mark of the limit.
    expect(svg.inks).toEqual(expect.arrayContaining(['#1d2125', '#575c61']));
    const png = await readPng(page, await taken(CURVE, 'PNG', 'curve.png'));
    expect(png).toMatchObject({ widthPx: 2 * svg.widthPx, heightPx: 2 * svg.heightPx, corner: WHITE });
    expect(png.colours).toBeGreaterThan(FEW_COLOURS);
    expect(await ground()).toBe(dark);
  });

  await test.step('the rings', async () => {
    await showPage(page, 'Joints');
    const rings = readTable(
      (await taken('One ring, joint by joint', 'CSV of all rings', 'rings.csv')).toString('utf8'),
    );
    expect(rings.origin.Table).toBe('Single rings of “Marked line”');
    expect(rings.rows).toHaveLength(RINGS);
    const gaps = column(rings, 'Widest gap that shows').map(Number);
    // The ring on the screen is one of them, with the gap it says.
    const caption = plain((await page.getByText(/^Ring [\d,]+ shows its widest gap/).textContent()) ?? '');
    const [, number = '', gap = ''] = /^Ring ([\d,]+) shows .*: ([\d.]+ mm) outside\./.exec(caption) ?? [];
    expect(gapText(gaps[Number(number.replace(',', '')) - 1] ?? Number.NaN, 'metric')).toBe(gap);
    const ring = await readSvg(page, (await taken('One ring, joint by joint', 'SVG', 'ring.svg')).toString('utf8'));
    expect(ring).toMatchObject({ problem: null, leans: [], ground: '#ffffff' });
    expect(ring.words.filter((word) => /^\d+$/.test(word))).toHaveLength(12);
  });

  await test.step('a drawing, and the sheet', async () => {
    await showPage(page, 'Piece');
    const plan = await readSvg(page, (await taken('Plan of the ring', 'SVG', 'plan.svg')).toString('utf8'));
    expect(plan).toMatchObject({ problem: null, leans: [], title: 'Plan of the ring' });
    expect(plan.words.join(' ')).toContain('280 mm');
    await showPage(page, 'Explain');
    const click = () => page.getByRole('button', { name: 'Save as PNG' }).click();
    const sheet = await readPng(page, (await desk.takeFile(page, click, info.outputPath('sheet.png'))).bytes);
    // A4 at 96 dots an inch, twice as fine.
    expect([sheet.widthPx, sheet.heightPx].map((px) => Math.round((px / 2 / 96) * 25.4))).toEqual([210, 297]);
    expect(sheet).toMatchObject({ corner: WHITE });
    expect(sheet.colours).toBeGreaterThan(FEW_COLOURS);
  });
});

test('whatever can be saved on any page is read back: every picture stands alone, every table has units', async ({
  blank: page,
  openApp,
  desk,
}, info) => {
  await openApp(page, { file: projectFile(info, TITLE, RINGS) });
  await settled(page);
  const saved: string[] = [];
  for (const name of ['Piece', 'Verdict', 'Joints', 'Test cuts'] as const) {
    await showPage(page, name);
    await workedOut(page);
    const controls = await page.getByRole('button', { name: /^Save “/ }).all();
    for (const control of controls) {
      const label = (await control.getAttribute('aria-label')) ?? '';
      await control.click();
      await expect(page.getByRole('menuitem').first()).toBeVisible();
      const item = (kind: string) => page.getByRole('menuitem', { name: kind, exact: true });
      const offered = { SVG: await item('SVG').count(), CSV: await item('CSV').count() };
      await page.keyboard.press('Escape');
      await expect(page.getByRole('menuitem')).toHaveCount(0);
      for (const [kind, count] of Object.entries(offered)) {
        if (count === 0) continue;
        const take = async () => {
          await control.click();
          await item(kind).click();
        };
        const { bytes } = await desk.takeFile(page, take, info.outputPath(`${saved.length}.file`));
        const text = bytes.toString('utf8');
        if (kind === 'SVG') {
          const picture = await readSvg(page, text);
          expect(picture, label).toMatchObject({ problem: null, leans: [], ground: '#ffffff' });
          expect(picture.words.length, label).toBeGreaterThanOrEqual(2);
        } else {
          const table = readTable(text);
          expect(table.origin, label).toMatchObject({ Project: TITLE, Seed: '7' });
          expect(table.units, label).toHaveLength(table.heads.length);
          expect(table.rows.length, label).toBeGreaterThan(0);
        }
        saved.push(`${name}: ${label} ${kind}`);
      }
    }
  }
  // Three drawings and nine charts at least, each with its picture, and most with a table.
  expect(saved.filter((each) => each.endsWith('SVG')).length, saved.join('\n')).toBeGreaterThanOrEqual(12);
  expect(saved.filter((each) => each.endsWith('CSV')).length, saved.join('\n')).toBeGreaterThanOrEqual(12);
});

test('saving is done by the keys alone, and its menu breaks no rule that a machine can check', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, TITLE, RINGS) });
  await settled(page);
  const button = page.getByRole('button', { name: `Save “${CURVE}”` });
  await button.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('menuitem', { name: 'SVG' })).toBeFocused();
  expect(await brokenRules(page, '[role="menu"]')).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(button).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('menuitem', { name: 'PNG' })).toBeFocused();
});
