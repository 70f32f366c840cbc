import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { figuresTable, showPage } from '../support/screen';

test('a word is explained where it stands, by the keyboard and by the mouse', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  const about = page.getByRole('button', { name: 'About rings that will not close' });
  await expect(about).toBeVisible();
  await about.focus();
  await page.keyboard.press('Enter');
  const words = page.getByRole('dialog', { name: 'About rings that will not close' });
  await expect(words).toContainText('by more than 2 mm');
  await page.keyboard.press('Escape');
  await expect(words).toHaveCount(0);
  await expect(about).toBeFocused();
  await about.click();
  await expect(words).toBeVisible();
});

test('the heads that a maker may not know have their word beside them', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  const about = (name: string) => page.getByRole('button', { name: `About ${name}`, exact: true });
  await expect(figuresTable(page).getByRole('button', { name: /^About / })).toHaveCount(5);
  await expect(about('how settled the figures are')).toBeVisible();
  await expect(about('chance against the limit')).toBeVisible();
  await showPage(page, 'Joints');
  for (const name of ['the mouth', 'the aim', 'what each source brings', 'the accuracy needed', 'contact and touch'])
    await expect(about(name)).toBeVisible();
  await showPage(page, 'Test cuts');
  await expect(about('the smallest error told')).toBeVisible();
  await showPage(page, 'Piece');
  await expect(about('tilt and swing')).toBeVisible();
});

test('a figure of a method says what it stands for', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await showPage(page, 'Methods');
  const method = page.getByRole('group', { name: 'Method A: Marked line' });
  await method.getByText('Figures', { exact: true }).first().click();
  await method.getByRole('button', { name: 'About Shared tilt error' }).press('Enter');
  await expect(method.getByText('every cut made with it is off alike')).toBeVisible();
});
