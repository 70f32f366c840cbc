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

test('edits of a program that was killed come back into their own file', async ({
  blank: page,
  openApp,
  killApp,
  keptAside,
  desk,
}, info) => {
  const file = projectFile(info, 'Bread bin');
  const before = readFileSync(file, 'utf8');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Bread bin');
  await titleField(page).fill('Bread bin, larger');
  await keptAside('Bread bin, larger');
  await killApp(page);
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
  await desk.answered(page, 'recovery', () => openApp(page));
  await expect(titleField(page)).toHaveValue('Lantern base, twelve staves');
  await expect(offer(page)).toBeHidden();
});

test('edits not answered for are offered again, and are gone after a plain no', async ({
  blank: page,
  openApp,
  killApp,
  keptAside,
  desk,
}) => {
  await openApp(page);
  await titleField(page).fill('Lamp column');
  await keptAside('Lamp column');
  await killApp(page);
  for (let start = 0; start < 2; start += 1) {
    await openApp(page);
    await expect(offer(page)).toContainText('“Lamp column”');
  }
  await offer(page).getByRole('button', { name: 'Throw them away' }).click();
  await expect(titleField(page)).toHaveValue('Lantern base, twelve staves');
  await desk.answered(page, 'recovery', () => openApp(page));
  await expect(offer(page)).toBeHidden();
});
