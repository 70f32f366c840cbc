/** What the pages say and refuse while a value cannot be used. */
import { expect, test } from '../support/app';
import { brokenRules } from '../support/broken-rules';
import { PAGES, settled, showPage, workedOut } from '../support/screen';

test('a slope that no longer fits has no answer, and not the one of its first key', async ({ page }) => {
  await showPage(page, 'Piece');
  const answer = page.getByRole('heading', { level: 1 });
  const slope = page.getByRole('textbox', { name: 'Slope from upright, typed' });
  await slope.press('ControlOrMeta+a');
  await slope.pressSequentially('90', { delay: 150 });
  await expect(answer).toHaveText('This cannot be worked out yet.');
  await expect(page.getByText('Blade tilt from square')).toHaveCount(0);
  const refusal = page.getByText(/^Size 280 mm .* leaves no opening/);
  await expect(refusal).toHaveCount(1);
  await page.getByRole('button', { name: 'Go to “Size”' }).click();
  await expect(page.getByRole('textbox', { name: 'Across the outside flats' })).toBeFocused();
});

test('without a usable value no page waits, prints or breaks a rule', async ({ page }) => {
  test.setTimeout(180_000);
  await settled(page);
  const limit = page.getByRole('textbox', { name: 'Widest gap where it shows' });
  await limit.fill('-1');
  await limit.blur();
  for (const name of PAGES) {
    await showPage(page, name);
    await expect(page.getByRole('heading', { level: 1 }).first()).toHaveText('This cannot be worked out yet.');
    await expect(page.getByText(/^Show gap limit -1 mm is below 0/)).toHaveCount(1);
    await workedOut(page);
    await expect(page.getByText('Waits its turn.')).toHaveCount(0);
    for (const save of await page.getByRole('button', { name: /^(Save “|Print$|Save as P)/ }).all()) {
      await expect(save).toBeDisabled();
    }
    expect(await brokenRules(page), name).toEqual([]);
  }
  await page.getByRole('button', { name: /^Go to “Show gap limit”/ }).click();
  await expect(page.getByRole('textbox', { name: 'Widest gap where it shows' })).toBeFocused();
});
