import { readFileSync, writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';

function titleField(page: Page) {
  return page.getByRole('textbox', { name: 'Title of the project' });
}

test('a file named at the start is shown, and saving writes it back', async ({ page, openApp }, info) => {
  const file = projectFile(info, 'Umbrella stand');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Umbrella stand');
  await titleField(page).fill('Umbrella stand, oak');
  await page.keyboard.press('Control+s');
  await expect(page.getByText('piece.ringtrue.json is saved.')).toBeAttached();
  expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Umbrella stand, oak');
  await page.reload();
  await expect(titleField(page)).toHaveValue('Umbrella stand, oak');
});

test('a wrong file named at the start is refused in sentences, and is left as it is', async ({
  page,
  openApp,
}, info) => {
  const file = projectFile(info, 'Umbrella stand');
  const wrong = readFileSync(file, 'utf8').replace(/"thicknessMm": [\d.]+/, '"thicknessMm": 0');
  writeFileSync(file, wrong);
  await openApp(page, { file });
  await expect(page.getByRole('dialog')).toContainText('Thickness 0 mm is not above 0.');
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(titleField(page)).not.toHaveValue('Umbrella stand');
  expect(readFileSync(file, 'utf8')).toBe(wrong);
});

test('a file chosen in the page is shown, and saving hands over a download', async ({ page }, info) => {
  const file = projectFile(info, 'Bread bin');
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await choosing).setFiles(file);
  await expect(titleField(page)).toHaveValue('Bread bin');
  await titleField(page).fill('Bread bin, pine');
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('piece.ringtrue.json');
  expect(JSON.parse(readFileSync(await download.path(), 'utf8')).title).toBe('Bread bin, pine');
});

test('closing the window asks only while there are edits', async ({ page }) => {
  let asked = 0;
  page.on('dialog', async (dialog) => {
    expect(dialog.type()).toBe('beforeunload');
    asked += 1;
    await dialog.accept();
  });
  await titleField(page).fill('Changed');
  await page.reload();
  expect(asked).toBe(1);
  await expect(titleField(page)).toBeVisible();
  await page.reload();
  expect(asked).toBe(1);
});
