import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { limitHandle } from '../support/screen';

test.describe.configure({ timeout: 180_000 });
// A picture of the whole page for each of hundreds of key presses would take longer than the journey.
test.use({ trace: 'off' });

/** The name of what is focused, near enough to how a screen reader makes it. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement;
    const label = focused?.getAttribute('aria-label');
    if (label) return label;
    const ids = focused?.getAttribute('aria-labelledby')?.split(' ') ?? [];
    const texts = ids.map((id) => document.getElementById(id)?.textContent ?? '');
    return ids.length > 0 ? texts.join(' ') : (focused?.textContent ?? '');
  });
}

/** Presses Tab until the element of that name is focused, as somebody without a mouse would. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 150; presses++) {
    if ((await focusedName(page)) === name) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach "${name}".`);
}

test('from start to a changed verdict without a mouse', async ({ page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern', 2000) });
  await expect(limitHandle(page)).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();

  await tabTo(page, 'Methods');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Duplicate Marked line');
  await page.keyboard.press('Space');
  await expect(page.getByRole('textbox', { name: 'Name of method B' })).toHaveValue('Marked line 2');
  await tabTo(page, 'Name of method B');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Knife line');
  await tabTo(page, 'Pencil line What fixes the stave width');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('group', { name: 'Method B: Knife line' })).toContainText('Knife line');

  await tabTo(page, 'Verdict');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Show gap limit');
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
