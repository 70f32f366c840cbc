import { expect, shellBehind, test } from '../support/app';

test('the window’s own menu does what the same command does on the page, and greys out what does not apply', async ({
  page,
}) => {
  const shell = shellBehind(page);
  await expect.poll(() => shell.chooseInMenu('Edit', 'Undo')).toBe('greyed out');
  expect(await shell.chooseInMenu('Go to', 'Methods')).toBe('chosen');
  await expect(page.getByRole('button', { name: 'Duplicate Marked line' })).toBeVisible();
  expect(await shell.chooseInMenu('Methods', 'Duplicate “Marked line”')).toBe('chosen');
  await expect(page.getByRole('textbox', { name: 'Name of method B' })).toHaveValue('Marked line 2');
  // The copy has commands of its own, and there is something to undo now.
  await expect.poll(() => shell.chooseInMenu('Methods', 'Remove “Marked line 2”')).toBe('chosen');
  await expect.poll(() => shell.chooseInMenu('Edit', 'Undo')).toBe('chosen');
  await expect(page.getByRole('textbox', { name: 'Name of method B' })).toHaveValue('Marked line 2');
  expect(await shell.chooseInMenu('Edit', 'Unheard of')).toBe('absent');
});
