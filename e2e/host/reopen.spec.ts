import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { figures, limitHandle, settled } from '../support/screen';

test.describe.configure({ timeout: 180_000 });

test('saved and opened again, a project gives the same digits', async ({ blank: page, openApp }, info) => {
  const file = projectFile(info, 'Bread bin', 20_000);
  await openApp(page, { file });
  await limitHandle(page).focus();
  await page.keyboard.press('PageUp');
  await settled(page);
  const before = await figures(page);
  await expect(page).toHaveTitle('• Bread bin – Ringtrue');
  await page.keyboard.press('Control+s');
  await expect(page).toHaveTitle('Bread bin – Ringtrue');
  await openApp(page, { file });
  await expect(limitHandle(page)).toHaveAttribute('aria-valuetext', '0.20 mm');
  await settled(page);
  expect(await figures(page)).toEqual(before);
});

test('a wrong file dropped on the window is refused by key and sentence, and the project stays', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page);
  const text = readFileSync(projectFile(info, 'Bread bin'), 'utf8').replace('"sides": 12', '"sides": 2');
  const dropped = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'bad.ringtrue.json', { type: 'application/json' }));
    return transfer;
  }, text);
  await page.dispatchEvent('main', 'drop', { dataTransfer: dropped });
  const dialog = page.getByRole('dialog', { name: 'bad.ringtrue.json was not opened' });
  await expect(dialog).toContainText('piece.sides: Number of sides 2 is below 3. Give the number of staves');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('textbox', { name: 'Title of the project' })).toHaveValue('Lantern base, twelve staves');
});

test('the example comes back after another project, once the loss of edits is agreed to', async ({
  blank: page,
  openApp,
}, info) => {
  const file = info.outputPath('other.ringtrue.json');
  writeFileSync(file, readFileSync(projectFile(info, 'Bread bin')));
  await openApp(page, { file });
  const title = page.getByRole('textbox', { name: 'Title of the project' });
  await title.fill('Bread bin, larger');
  page.once('dialog', (dialog) => dialog.dismiss());
  await page.getByRole('button', { name: 'Open the example' }).click();
  await expect(title).toHaveValue('Bread bin, larger');
  page.once('dialog', (dialog) => dialog.accept());
  await page.getByRole('button', { name: 'Open the example' }).click();
  await expect(title).toHaveValue('Lantern base, twelve staves');
});
