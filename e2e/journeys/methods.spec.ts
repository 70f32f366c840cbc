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

test('what differs from a method is marked in words, choice by choice and figure by figure', async ({ page }) => {
  await showPage(page, 'Methods');
  await page.getByRole('combobox', { name: 'Show what differs from' }).selectOption('Fixed stop');
  await expect(page.getByText('“Fixed stop, tested ring” differs from “Fixed stop” in the test cuts')).toBeVisible();
  const marked = page.getByRole('group', { name: 'Method A: Marked line' });
  await expect(marked.getByText('≠ “Fixed stop”: Scale on the saw')).toBeVisible();
  await marked
    .getByText(/^Figures, \d+ differ$/)
    .first()
    .click();
  await expect(marked.getByText('≠ 0.5° in “Fixed stop”')).toBeVisible();
  // The method itself differs from itself in nothing, and one that is renamed stays the one held against.
  const itself = page.getByRole('group', { name: 'Method B: Fixed stop' });
  await expect(itself.getByText('≠')).toHaveCount(0);
  await page.getByRole('textbox', { name: 'Name of method B' }).fill('Stop block');
  await expect(marked.getByText('≠ “Stop block”: Scale on the saw')).toBeVisible();
});

test('a method is moved along the row by the keyboard alone, and the focus goes with it', async ({ page }) => {
  await showPage(page, 'Methods');
  const right = page.getByRole('button', { name: 'Move Marked line to the right' });
  await right.focus();
  for (let step = 0; step < 3; step++) await page.keyboard.press('Enter');
  await expect(page.getByRole('textbox', { name: 'Name of method D' })).toHaveValue('Marked line');
  await expect(page.getByRole('button', { name: 'Move Marked line to the left' })).toBeFocused();
});

test('changed figures go back to the choice they were started from', async ({ page }) => {
  await showPage(page, 'Methods');
  const method = page.getByRole('group', { name: 'Method A: Marked line' });
  await method.getByText('Figures', { exact: true }).first().click();
  const shared = method.getByRole('textbox', { name: 'Shared tilt error' });
  await shared.fill('0.3');
  await shared.press('Enter');
  await method
    .getByRole('button', { name: 'How the tilt is set in Marked line: back to “Drafted angle”' })
    .press('Enter');
  await expect(shared).toHaveValue('0.1');
  await expect(method.getByRole('button', { name: /back to/ })).toHaveCount(0);
});
