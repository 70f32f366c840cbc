/**
 * The main journeys in Electron itself, through Playwright's driver for it. The list of projects holds them only where
 * Electron's runtime and a display are.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, test as base, type ElectronApplication, expect, type Page } from '@playwright/test';
import { presentRuntime } from '../../main/electron.mjs';
import { ROOT } from '../../main/ready.mjs';
import { projectFile } from '../support/project-file';
import { figures, limitHandle, settled, showPage } from '../support/screen';

interface Started {
  app: ElectronApplication;
  page: Page;
}

/** Starts the program with a file; what is its user's own lies in a folder of the test. */
const test = base.extend<{ start: (file?: string) => Promise<Started> }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern even where nothing is taken.
  start: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'ringtrue-electron-'));
    const apps: ElectronApplication[] = [];
    await use(async (file) => {
      for (const app of apps.splice(0)) await end(app);
      const app = await _electron.launch({
        executablePath: presentRuntime() ?? '',
        args: ['--no-sandbox', `--user-data-dir=${folder}`, ROOT, ...(file ? [file] : [])],
      });
      apps.push(app);
      const page = await app.firstWindow();
      await page.locator('main h1').waitFor();
      return { app, page };
    });
    for (const app of apps) await end(app);
    rmSync(folder, { recursive: true, force: true });
  },
});

test.describe.configure({ timeout: 180_000 });

/** Leaves without being asked about edits. */
async function end(app: ElectronApplication): Promise<void> {
  await app.evaluate(({ app: electron }) => electron.exit(0)).catch(() => {});
  await app.close().catch(() => {});
}

test('the first start shows the verdict on the example', async ({ start }) => {
  const { app, page } = await start();
  await expect(page).toHaveTitle('Lantern base, twelve staves – Ringtrue');
  await expect(page.getByRole('main')).toContainText(/\d+ in (100|1,000)/);
  expect(await page.evaluate(() => 'require' in window || 'process' in window)).toBe(false);
  expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
});

test('a changed method and a moved limit move the verdict', async ({ start }, info) => {
  const { page } = await start(projectFile(info, 'Bread bin', 4000));
  await settled(page);
  const before = await figures(page);
  await limitHandle(page).focus();
  await page.keyboard.press('ArrowLeft');
  await settled(page);
  const moved = await figures(page);
  expect(moved).not.toEqual(before);
  await showPage(page, 'Piece');
  await page.getByRole('textbox', { name: 'Height' }).fill('160 mm');
  await showPage(page, 'Verdict');
  await settled(page);
  expect(await figures(page)).not.toEqual(moved);
});

test('a wrong file is refused in sentences and left as it is', async ({ start }, info) => {
  const { app, page } = await start();
  const file = projectFile(info, 'Bread bin');
  const wrong = readFileSync(file, 'utf8').replace('"sides": 12', '"sides": 2');
  await app.evaluate(({ dialog }, path) => {
    dialog.showOpenDialog = async () => ({ canceled: false, filePaths: [path] });
  }, file);
  writeFileSync(file, wrong);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText('Number of sides 2 is below 3.');
  expect(readFileSync(file, 'utf8')).toBe(wrong);
});

test('saved and opened again, a project gives the same digits', async ({ start }, info) => {
  const file = projectFile(info, 'Bread bin', 4000);
  const first = await start(file);
  await limitHandle(first.page).focus();
  await first.page.keyboard.press('PageUp');
  await settled(first.page);
  const before = await figures(first.page);
  await first.page.keyboard.press('ControlOrMeta+s');
  await expect(first.page).toHaveTitle('Bread bin – Ringtrue');
  const { page } = await start(file);
  await expect(limitHandle(page)).toHaveAttribute('aria-valuetext', '0.20 mm');
  await settled(page);
  expect(await figures(page)).toEqual(before);
});

test('the sheet is printed to a PDF', async ({ start }, info) => {
  const { app, page } = await start(projectFile(info, 'Bread bin', 2000));
  const path = info.outputPath('sheet.pdf');
  await app.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = async () => ({ canceled: false, filePath });
  }, path);
  await showPage(page, 'Explain');
  await settled(page);
  await page.getByRole('button', { name: /PDF/ }).click();
  await expect.poll(() => existsSync(path) && readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
});
