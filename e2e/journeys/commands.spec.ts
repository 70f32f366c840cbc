import { expect, test } from '../support/app';
import { limitHandle } from '../support/screen';

test('a command is found by its words and done without a mouse', async ({ page }) => {
  await expect(limitHandle(page)).toBeVisible();
  await page.keyboard.press('ControlOrMeta+k');
  const list = page.getByRole('dialog', { name: 'Commands' });
  await expect(page.getByRole('combobox', { name: 'Find a command' })).toBeFocused();
  await page.keyboard.type('dupl fixed');
  await expect(list.getByRole('option')).toHaveText(['Duplicate “Fixed stop”', 'Duplicate “Fixed stop, tested ring”']);
  // The first is chosen at once.
  await expect(list.getByRole('option').first()).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect(list).toHaveCount(0);
  await expect(page.getByRole('textbox', { name: 'Name of method C' })).toHaveValue('Fixed stop 2');
});

test('arrows go through the list, each command with its keys', async ({ page }) => {
  await page.keyboard.press('ControlOrMeta+k');
  const option = (name: string) => page.getByRole('option', { name, exact: true });
  await expect(option('Open')).toHaveAttribute('aria-selected', 'true');
  await expect(option('Open')).toContainText(/Ctrl\+O|⌘O/);
  await page.keyboard.press('ArrowDown');
  await expect(option('Recent')).toHaveAttribute('aria-selected', 'true');
  // Up from the first leads round to the last, which is scrolled to.
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  const last = page.getByRole('option').last();
  await expect(last).toHaveAttribute('aria-selected', 'true');
  await expect(last).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole('combobox', { name: 'Find a command' })).toHaveAttribute(
    'aria-activedescendant',
    (await last.getAttribute('id')) ?? '',
  );
});

test('what does not apply says why, and is not done', async ({ page }) => {
  await expect(limitHandle(page)).toBeVisible();
  await page.getByRole('button', { name: 'Commands' }).click();
  await page.keyboard.type('undo');
  const undo = page.getByRole('option', { name: 'Undo' });
  await expect(undo).toHaveAccessibleDescription('Nothing was changed yet.');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Commands' })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'Not done. Nothing was changed yet.' })).toBeAttached();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('zebra');
  await expect(page.getByText('No command has all of these words.')).toBeVisible();
});

test('Escape closes the list and gives the focus back, with what was being typed kept', async ({ page }) => {
  const title = page.getByRole('textbox', { name: 'Title of the project' });
  await title.fill('Lantern for the porch');
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog', { name: 'Commands' })).toHaveCount(0);
  await expect(title).toBeFocused();
  await expect(title).toHaveValue('Lantern for the porch');
});

test('the sheet is printed by a command only where there is one', async ({ page }) => {
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', '');
  });
  const say = async (words: string) => {
    await page.keyboard.press('ControlOrMeta+k');
    await page.keyboard.type(words);
    await page.keyboard.press('Enter');
  };
  await say('print sheet');
  await expect(page.getByRole('option', { name: 'Print the sheet' })).toContainText('go there first');
  await page.keyboard.press('Escape');
  await say('go to explain');
  await expect(page.getByRole('button', { name: 'Print', exact: true })).toBeVisible();
  expect(await page.locator('[data-printed]').count()).toBe(0);
  await say('print sheet');
  await expect(page.locator('[data-printed]')).toHaveCount(1);
});
