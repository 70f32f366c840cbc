import { readFileSync } from 'node:fs';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { settled, sheet, showPage } from '../support/screen';

test.describe.configure({ timeout: 400_000 });

const CLOSING = 'The joints are splined with walnut.';

test('the maker’s words stand on the sheet, are saved with the project and can be undone', async ({
  blank: page,
  openApp,
}, info) => {
  const file = projectFile(info, 'Lantern');
  await openApp(page, { file });
  await showPage(page, 'Explain');
  await expect(sheet(page).getByRole('heading', { level: 1 })).toHaveText('Lantern');
  await page.getByLabel('Title', { exact: true }).fill('Lantern for a porch');
  await page.getByLabel('Line for the client').fill('For the neighbours');
  await page.getByLabel('Closing words').fill(`${CLOSING}\n\nKeep it dry.`);
  await expect(sheet(page).getByRole('heading', { level: 1 })).toHaveText('Lantern for a porch');
  await expect(sheet(page)).toContainText('For the neighbours');
  await expect(sheet(page).getByText(CLOSING)).toBeVisible();
  await page.keyboard.press('Control+s');
  await expect(page.getByText('piece.ringtrue.json is saved.')).toBeAttached();
  expect(JSON.parse(readFileSync(file, 'utf8')).explain).toEqual({
    title: 'Lantern for a porch',
    client: 'For the neighbours',
    closing: `${CLOSING}\n\nKeep it dry.`,
  });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(sheet(page).getByText(CLOSING)).toHaveCount(0);
});

test('what is not to be shown is not on the sheet', async ({ page }) => {
  await showPage(page, 'Explain');
  const shown = page.getByRole('group', { name: 'What it shows' });
  await expect(sheet(page).getByRole('heading', { name: 'What the seasons do' })).toBeVisible();
  await shown.getByRole('checkbox', { name: 'What the seasons do' }).uncheck();
  await expect(sheet(page).getByRole('heading', { name: 'What the seasons do' })).toHaveCount(0);
  await expect(sheet(page).getByRole('img')).toHaveCount(2);
  await shown.getByRole('checkbox', { name: 'The drawing' }).uncheck();
  await expect(sheet(page).getByRole('img')).toHaveCount(1);
});

test('the sheet is about the method that was chosen, and follows its name', async ({ page }) => {
  await showPage(page, 'Explain');
  const before = (await sheet(page).textContent()) ?? '';
  await page.getByRole('radio', { name: 'Marked line' }).check();
  await expect(sheet(page)).not.toHaveText(before);
  await expect(sheet(page).getByRole('img', { name: /^Marked line: \d+ of 50 within/ })).toBeVisible();
  await showPage(page, 'Methods');
  const name = page.getByRole('textbox', { name: 'Name of method A' });
  await name.fill('Knife line');
  await name.blur();
  await showPage(page, 'Explain');
  await expect(page.getByRole('radio', { name: 'Knife line' })).toBeChecked();
});

test('a sheet that runs onto a second page says so', async ({ page }) => {
  await showPage(page, 'Explain');
  const over = page.getByText('This runs onto a second page.');
  await expect(over).toBeHidden();
  await page.getByLabel('Closing words').fill(Array.from({ length: 20 }, (_, k) => `Line ${k}.`).join('\n\n'));
  await expect(over).toBeVisible();
});

test('a chosen paper is remembered on this machine', async ({ page }) => {
  await showPage(page, 'Explain');
  await page.getByRole('radio', { name: 'Letter' }).check({ force: true });
  const widthIn = (): Promise<number> => sheet(page).evaluate((article) => article.getBoundingClientRect().width / 96);
  expect(await widthIn()).toBeCloseTo(8.5, 2);
  await page.reload();
  await showPage(page, 'Explain');
  await expect(page.getByRole('radio', { name: 'Letter' })).toBeChecked();
});

test('the maker’s report fills in what takes a while', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern', 1000) });
  await settled(page);
  await showPage(page, 'Explain');
  await page.getByRole('radio', { name: 'The maker' }).check({ force: true });
  await expect(sheet(page)).toContainText('Strips and cuts in their order');
  await expect(sheet(page)).not.toContainText('Not worked out yet.', { timeout: 200_000 });
  await expect(sheet(page).getByRole('rowheader', { name: 'Tilt setting' })).toBeVisible();
});
