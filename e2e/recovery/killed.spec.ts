import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';

function titleField(page: Page) {
  return page.getByRole('textbox', { name: 'Title of the project' });
}

function offer(page: Page) {
  return page.getByRole('dialog', { name: 'Bring back unsaved edits?' });
}

/** Edits are kept two seconds after the last of them. */
const KEPT_BY_MS = 3500;

/** Changes the title, waits until the change is kept aside, and ends the program as a crash does. */
async function editAndDie(page: Page, title: string, killApp: (page: Page) => Promise<void>): Promise<void> {
  await titleField(page).fill(title);
  await page.waitForTimeout(KEPT_BY_MS);
  await killApp(page);
}

test('edits of a program that was killed come back into their own file', async ({ page, openApp, killApp }, info) => {
  const file = projectFile(info, 'Bread bin');
  const before = readFileSync(file, 'utf8');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Bread bin');
  await editAndDie(page, 'Bread bin, larger', killApp);
  expect(readFileSync(file, 'utf8')).toBe(before);
  await openApp(page);
  await expect(offer(page)).toContainText('Ringtrue ended without saving “Bread bin, larger”');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(offer(page)).toBeVisible();
  await offer(page).getByRole('button', { name: 'Bring back the edits' }).click();
  await expect(titleField(page)).toHaveValue('Bread bin, larger');
  await expect(page).toHaveTitle('• Bread bin, larger – Ringtrue');
  await page.keyboard.press('Control+s');
  await expect(page).toHaveTitle('Bread bin, larger – Ringtrue');
  expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Bread bin, larger');
  await openApp(page);
  await expect(titleField(page)).toHaveValue('Lantern base, twelve staves');
  await page.waitForTimeout(500);
  await expect(offer(page)).toBeHidden();
});

test('edits not answered for are offered again, and are gone after a plain no', async ({ page, openApp, killApp }) => {
  await editAndDie(page, 'Lamp column', killApp);
  for (let start = 0; start < 2; start += 1) {
    await openApp(page);
    await expect(offer(page)).toContainText('“Lamp column”');
  }
  await offer(page).getByRole('button', { name: 'Throw them away' }).click();
  await expect(titleField(page)).toHaveValue('Lantern base, twelve staves');
  await openApp(page);
  await page.waitForTimeout(500);
  await expect(offer(page)).toBeHidden();
});
