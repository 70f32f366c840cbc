import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { brokenRules } from '../support/broken-rules';
import { projectFile } from '../support/project-file';
import { PAGES, settled, sheet, showPage, workedOut } from '../support/screen';

test.describe.configure({ timeout: 180_000 });

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no page breaks a rule that a machine can check, ${colorScheme}`, async ({ blank: page, openApp }, info) => {
    await page.emulateMedia({ colorScheme });
    await openApp(page, { file: projectFile(info, 'Lantern') });
    for (const name of PAGES) {
      await test.step(name, async () => {
        await showPage(page, name);
        if (name === 'Test cuts') await page.getByRole('textbox', { name: 'By how much' }).fill('2.5');
        await workedOut(page);
        for (const fold of await page.locator('details > summary').all()) await fold.click();
        expect(await brokenRules(page), name).toEqual([]);
      });
    }
    // Paper stays white, whatever the window's colours.
    for (const kind of ['The maker', 'A client']) {
      await page.getByRole('radio', { name: kind }).check({ force: true });
      await workedOut(page);
      await expect(sheet(page)).toHaveCSS('background-color', 'rgb(255, 255, 255)');
      await expect(sheet(page).getByRole('heading', { level: 1 })).toHaveCSS('color', 'rgb(29, 33, 37)');
      expect(await brokenRules(page), kind).toEqual([]);
    }
    await page.keyboard.press('ControlOrMeta+k');
    await expect(page.getByRole('option', { name: 'Open', exact: true })).toBeVisible();
    expect(await brokenRules(page), 'Commands').toEqual([]);
  });
}

/** Words that are cut off, or lie under other words, with the text around them. */
function lostWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const lost: string[] = [];
    // A name that only a screen reader is to hear has a box of one pixel.
    const isShown = (element: Element) =>
      element.checkVisibility() && !element.closest('.spoken') && element.getBoundingClientRect().width > 2;
    const words: { text: string; box: DOMRect; parent: Element }[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const parent = node.parentElement;
      const text = node.textContent?.trim() ?? '';
      if (!parent || text === '' || !isShown(parent) || parent.closest('svg, select, option, script')) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects()) if (box.width > 1) words.push({ text, box, parent });
      const clip = parent.closest('[class]');
      if (!clip) continue;
      const { overflowX, overflowY } = getComputedStyle(clip);
      const isCut =
        (['hidden', 'clip'].includes(overflowX) && clip.scrollWidth > clip.clientWidth + 1) ||
        (['hidden', 'clip'].includes(overflowY) && clip.scrollHeight > clip.clientHeight + 1);
      if (isCut) lost.push(`cut off: ${text.slice(0, 60)}`);
    }
    words.forEach((a, i) => {
      for (const b of words.slice(i + 1)) {
        if (a.parent === b.parent) continue;
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // Line boxes of neighbours touch; letters lie over letters only when most of a line is shared.
        if (across > 4 && down > 0.5 * Math.min(a.box.height, b.box.height)) {
          lost.push(`“${a.text.slice(0, 40)}” over “${b.text.slice(0, 40)}”`);
        }
      }
    });
    return [...new Set(lost)];
  });
}

test('at twice the text size nothing runs out of the window or over something else, on any page', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  for (const name of PAGES) {
    await showPage(page, name);
    if (name === 'Test cuts') await page.getByRole('textbox', { name: 'By how much' }).fill('2.5');
    await workedOut(page);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow, name).toBeLessThanOrEqual(0);
    expect(await lostWords(page), name).toEqual([]);
  }
});

test('the theme chosen by hand holds after a reload, against the machine’s own', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const light = await ground();
  await page.getByLabel('Light or dark').selectOption('dark');
  const dark = await ground();
  expect(dark).not.toBe(light);
  await page.reload();
  await expect(page.getByLabel('Light or dark')).toHaveValue('dark');
  expect(await ground()).toBe(dark);
});
