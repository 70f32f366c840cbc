/**
 * `npm run shots [-- FOLDER]`: pictures of every page with the example, light and dark, at two sizes of window, to be
 * looked at; into `shots/` unless a folder is named. Renews the three pictures that the README shows too.
 */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { ensureBuilt, ensureChromium, ensureInstalled, orSayWhy, ROOT } from '../main/ready.mjs';

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];
const SCHEMES = /** @type {const} */ (['light', 'dark']);
const PAGES = ['Piece', 'Methods', 'Verdict', 'Joints', 'Test cuts', 'Explain'];
/** Picture in the README → the picture it is a copy of. */
const README = {
  'verdict-light': 'verdict-light-1280',
  'joints-light': 'joints-light-1280',
  'piece-dark': 'piece-dark-1280',
};
const FLAGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-sync'];
/** A long question may take so long. */
const ANSWERED_MS = 120_000;

/**
 * @param {import('@playwright/test').Page} page
 * @param {string} name as it stands in the navigation
 */
async function showSettled(page, name) {
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name }).click();
  const busy = ['preview', 'refining', 'working'].map((standing) => `.work-mark[data-standing=${standing}]`).join(', ');
  await page.waitForFunction((marks) => document.querySelector(marks) === null, busy, { timeout: ANSWERED_MS });
}

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureBuilt();
  const executablePath = await ensureChromium();
  const folder = resolve(process.argv[2] ?? join(ROOT, 'shots'));
  mkdirSync(folder, { recursive: true });
  const { chromium } = await import('@playwright/test');
  const { startLocalHost } = await import(new URL('../dist/main/local.js', import.meta.url).href);
  const stateFolder = mkdtempSync(join(tmpdir(), 'ringtrue-shots-'));
  const host = await startLocalHost({ pagesFolder: join(ROOT, 'dist', 'renderer'), startFile: undefined, stateFolder });
  const browser = await chromium.launch({ executablePath, args: FLAGS });
  try {
    for (const colorScheme of SCHEMES) {
      const page = await browser.newPage({ colorScheme, viewport: SIZES[0] });
      await page.goto(host.address('often'));
      const putAway = page.getByRole('button', { name: 'Put this away' });
      if (await putAway.isVisible()) await putAway.click();
      for (const name of PAGES) {
        await showSettled(page, name);
        for (const size of SIZES) {
          await page.setViewportSize(size);
          // Charts measure themselves a frame after the window has changed.
          await page.waitForTimeout(500);
          const file = `${name.toLowerCase().replace(' ', '-')}-${colorScheme}-${size.width}`;
          await page.screenshot({ path: join(folder, `${file}.png`), animations: 'disabled' });
          await page.screenshot({ path: join(folder, `${file}-whole.png`), animations: 'disabled', fullPage: true });
          process.stdout.write(`${file}\n`);
        }
      }
      await page.close();
    }
    for (const [shown, taken] of Object.entries(README)) {
      copyFileSync(join(folder, `${taken}.png`), join(ROOT, 'e2e', 'pictures', `${shown}.png`));
    }
  } finally {
    await browser.close();
    await host.close();
    rmSync(stateFolder, { recursive: true, force: true });
  }
});
