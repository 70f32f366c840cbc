import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { showPage } from '../support/screen';

test.describe.configure({ timeout: 240_000 });

const CHART = 'What each number of rounds comes to';

/** Waits until test cuts have been weighed for the project as it stands. */
async function weighed(page: Page): Promise<void> {
  await expect(page.getByRole('img', { name: /^Cost of a good piece/ })).toBeVisible({ timeout: 180_000 });
  await expect(answer(page).locator('.softened')).toHaveCount(0, { timeout: 180_000 });
}

function answer(page: Page) {
  return page.getByRole('heading', { level: 1 });
}

function rounds(page: Page) {
  return page.getByRole('textbox', { name: 'Test rounds, at most, typed' });
}

function dial(page: Page) {
  return page.getByRole('region', { name: 'What to dial', exact: true });
}

function testPiece(page: Page, name: string) {
  return page.getByRole('radiogroup', { name: 'Test piece' }).getByRole('radio', { name });
}

test('other rounds move the answer at once, and one undo takes them back', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await showPage(page, 'Test cuts');
  await weighed(page);
  // The example tests one of its methods, and that is the one looked at first.
  await expect(
    page.getByRole('button', { name: 'Method', exact: false }).filter({ hasText: 'tested ring' }),
  ).toBeVisible();
  await expect(answer(page)).toContainText('up to two rounds with a whole ring');
  const before = (await answer(page).textContent()) ?? '';
  await rounds(page).fill('1');
  // All numbers of rounds were weighed together, so that nothing has to be worked out anew.
  await expect(answer(page)).toContainText('one round with a whole ring', { timeout: 2000 });
  await rounds(page).press('Enter');
  await page.keyboard.press('Control+z');
  await expect(answer(page)).toHaveText(before);
  await expect(rounds(page)).toHaveValue('2');

  await page.getByText(`${CHART}, as a table`, { exact: true }).click();
  const table = page.getByRole('region', { name: `${CHART}, as a table` }).getByRole('table');
  await expect(table.getByRole('row')).toHaveCount(6);
  await expect(table.getByRole('row').nth(1)).toContainText('none');
});

test('a reading gives what to dial and which way, and the next one goes on from there', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await showPage(page, 'Test cuts');
  const reading = page.getByRole('textbox', { name: 'By how much' });
  await expect(dial(page)).toContainText('Type the reading');

  // Twelve staves, 280 mm across the flats: N·D·π/180 with D across the corners is 60.7 mm for a degree.
  await reading.fill('6.07');
  await expect(dial(page)).toContainText('the bevels are too small');
  await expect(dial(page)).toContainText('Tilt the blade 0.10° further over');
  const readouts = dial(page).getByRole('table');
  await expect(readouts.getByRole('row', { name: /from square/ })).toContainText(/15\.00°\s*15\.10°/);
  await expect(readouts.getByRole('row', { name: /from the table/ })).toContainText(/75\.00°\s*74\.90°/);

  await page.getByRole('radio', { name: 'The two ends overlap' }).click({ force: true });
  await expect(dial(page)).toContainText('Bring the blade 0.10° back towards upright');

  await dial(page).getByRole('button', { name: 'Dialled; read the next test piece' }).click();
  await expect(page.getByRole('textbox', { name: /^What the tilt shows now/ })).toHaveValue(/^14\.9/);
  await expect(reading).toHaveValue('');
  // Within the limit of 0.3 mm: stop. A minus means that the ends overlap.
  await reading.fill('-0.2');
  await expect(page.getByRole('radio', { name: 'The two ends overlap' })).toBeChecked();
  await expect(dial(page)).toContainText('Leave the tilt as it is');

  // The card is not part of the project, and stays while one looks elsewhere.
  await showPage(page, 'Piece');
  await showPage(page, 'Test cuts');
  await expect(dial(page)).toContainText('Leave the tilt as it is');
});

test('a test piece that does not suit the piece says why, and the others go on telling', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await showPage(page, 'Piece');
  await page.getByRole('textbox', { name: 'Sides, typed' }).fill('11');
  await showPage(page, 'Test cuts');
  const table = page.getByRole('region', { name: 'Which test piece tells most, table' });
  const why = 'Half a ring needs an even number of sides, but there are 11. Use a whole ring or a pair of offcuts.';
  await expect(table).toContainText(why);
  await testPiece(page, 'Half a ring').click({ force: true });
  await expect(page.getByRole('radiogroup', { name: 'Test piece' })).toHaveAccessibleDescription(new RegExp(why));
  await expect(page.getByRole('region', { name: /^At the bench/ })).toContainText(why);
  await expect(page.getByRole('textbox', { name: 'By how much' })).toHaveCount(0);

  await testPiece(page, 'A pair of offcuts').click({ force: true });
  await page.getByRole('textbox', { name: 'Arm it is read over' }).fill('20');
  await expect(table).toContainText('moves 0.7 mm for each degree of the tilt, below the 1 mm that can be read');
  await page.getByRole('textbox', { name: 'Arm it is read over' }).fill('200');
  await expect(table.getByRole('row', { name: /A pair of offcuts/ })).toContainText('6.98 mm');
});
