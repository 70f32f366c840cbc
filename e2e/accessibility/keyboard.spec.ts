import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { limitHandle } from '../support/screen';

test.describe.configure({ timeout: 180_000 });
/** The name of what is focused, near enough to how a screen reader makes it. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement;
    const label = focused?.getAttribute('aria-label');
    if (label) return label;
    const labels =
      focused instanceof HTMLInputElement || focused instanceof HTMLTextAreaElement ? focused.labels : null;
    if (labels?.length) return [...labels].map(({ textContent }) => textContent.trim()).join(' ');
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

test('from start to a changed verdict without a mouse', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
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

test('the joints, the test cuts and the sheet without a mouse', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await expect(limitHandle(page)).toBeVisible();

  await tabTo(page, 'Joints');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('of 100 pieces', { timeout: 120_000 });
  await tabTo(page, 'Joint that is marked');
  const strip = page.getByRole('slider', { name: 'Joint that is marked' });
  await page.keyboard.press('Home');
  await expect(strip).toHaveAttribute('aria-valuetext', /^Joint 1, between staves 1 and 2: 0\.\d+ mm$/);
  await page.keyboard.press('ArrowRight');
  await expect(strip).toHaveAttribute('aria-valuetext', /^Joint 2, /);
  await expect(page.getByRole('region', { name: 'The joint that is marked' })).toContainText('Joint 2, between');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(strip).toHaveAttribute('aria-valuetext', /^Joint 12, between staves 12 and 1: /);

  await tabTo(page, 'Test cuts');
  await page.keyboard.press('Enter');
  await tabTo(page, 'By how much');
  await page.keyboard.type('6.07');
  await expect(page.getByRole('region', { name: 'What to dial', exact: true })).toContainText('Tilt the blade 0.10°');
  await tabTo(page, 'Dialled; read the next test piece');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('textbox', { name: 'By how much' })).toHaveValue('');

  await tabTo(page, 'Explain');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Line for the client');
  await page.keyboard.type('For the neighbours');
  await expect(page.getByRole('article', { name: /^Sheet: / })).toContainText('For the neighbours');
  await tabTo(page, 'The drawing');
  await page.keyboard.press('Space');
  await expect(page.getByRole('checkbox', { name: 'The drawing' })).not.toBeChecked();
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
