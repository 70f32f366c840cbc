import { expect, test } from '../support/app';
import { figuresTable, showPage } from '../support/screen';

test('methods are added, copied, moved, renamed, switched off and removed', async ({ page }) => {
  await showPage(page, 'Methods');
  const methods = page.getByRole('region', { name: 'Methods side by side' }).getByRole('group', { name: /^Method / });
  await expect(methods).toHaveCount(4);

  await page.getByLabel('Start a new method from').selectOption('Fixed stop');
  await page.getByRole('button', { name: 'Add a method' }).click();
  await expect(methods).toHaveCount(5);
  await expect(methods.nth(4)).toHaveAccessibleName('Method E: Fixed stop 2');

  await page.getByRole('button', { name: 'Duplicate Marked line' }).click();
  await expect(methods.nth(1)).toHaveAccessibleName('Method B: Marked line 2');
  await expect(page.getByRole('button', { name: 'Add a method' })).toBeDisabled();

  await page.getByRole('button', { name: 'Move Marked line 2 to the right' }).click();
  await expect(methods.nth(2)).toHaveAccessibleName('Method C: Marked line 2');

  const name = page.getByRole('textbox', { name: 'Name of method C' });
  await name.fill('Knife line');
  await name.blur();
  await expect(methods.nth(2)).toHaveAccessibleName('Method C: Knife line');

  await methods.nth(2).getByRole('checkbox', { name: 'Takes part in the comparison' }).uncheck();
  await showPage(page, 'Verdict');
  await expect(figuresTable(page).getByRole('rowheader', { name: 'Knife line' })).toHaveCount(0);
  await page.getByRole('checkbox', { name: 'Knife line' }).check();
  await expect(figuresTable(page).getByRole('rowheader', { name: 'Knife line' })).toHaveCount(1);

  await showPage(page, 'Methods');
  await page.getByRole('button', { name: 'Remove Knife line' }).click();
  await expect(methods).toHaveCount(5);
  await page.keyboard.press('Control+z');
  await expect(methods).toHaveCount(6);
});

test('two methods of one name are told so beside the name', async ({ page }) => {
  await showPage(page, 'Methods');
  const name = page.getByRole('textbox', { name: 'Name of method B' });
  await name.fill('Marked line');
  await expect(name).toHaveAccessibleDescription(/Give each method a name of its own\./);
});
