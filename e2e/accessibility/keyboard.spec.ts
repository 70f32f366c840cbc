import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { limitHandle } from '../support/screen';

test.describe.configure({ timeout: 120_000 });

/** Presses Tab until the element named is focused, as somebody without a mouse would. */
async function tabTo(page: Page, role: string, name: string): Promise<void> {
  const isThere = () =>
    page
      .getByRole(role as 'button', { name, exact: true })
      .first()
      .evaluate((element) => element === document.activeElement);
  for (let presses = 0; presses < 120; presses++) {
    if (await isThere()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach the ${role} "${name}".`);
}

test('from start to a changed verdict without a mouse', async ({ page }) => {
  await expect(limitHandle(page)).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();

  await tabTo(page, 'button', 'Methods');
  await page.keyboard.press('Enter');
  await tabTo(page, 'button', 'Duplicate Marked line');
  await page.keyboard.press('Space');
  await expect(page.getByRole('textbox', { name: 'Name of method B' })).toHaveValue('Marked line 2');
  await tabTo(page, 'textbox', 'Name of method B');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Knife line');
  await tabTo(page, 'button', 'Pencil line What fixes the stave width');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('group', { name: 'Method B: Knife line' })).toContainText('Knife line');

  await page.keyboard.press('ControlOrMeta+Home');
  await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  await tabTo(page, 'button', 'Verdict');
  await page.keyboard.press('Enter');
  await tabTo(page, 'slider', 'Show gap limit');
  await page.keyboard.press('ArrowLeft');
  await expect(limitHandle(page)).toHaveAttribute('aria-valuetext', '0.14 mm');
  await expect(page.getByRole('rowheader', { name: 'Knife line' })).toBeVisible();
});

test('whatever is focused can be seen to be', async ({ page }) => {
  await expect(limitHandle(page)).toBeVisible();
  for (let presses = 0; presses < 25; presses++) {
    await page.keyboard.press('Tab');
    const mark = await page.evaluate(() => {
      const focused = document.activeElement;
      if (!focused || focused === document.body) return 'nothing';
      const inner = focused.querySelector('.limit-knob') ?? focused;
      const { outlineStyle, outlineWidth } = getComputedStyle(inner);
      return outlineStyle === 'none' ? `no outline on ${focused.outerHTML.slice(0, 120)}` : outlineWidth;
    });
    expect(mark).toMatch(/^(nothing|[\d.]+px)$/);
  }
});
