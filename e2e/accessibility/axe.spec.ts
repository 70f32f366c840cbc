import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { settled, showPage } from '../support/screen';

test.describe.configure({ timeout: 180_000 });
// With every list opened, a trace pictures thousands of elements at each click, and takes longer than the looking.
test.use({ trace: 'off' });

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const colorScheme of ['light', 'dark'] as const) {
  for (const name of ['Piece', 'Methods', 'Verdict', 'Explain'] as const) {
    test(`the page ${name}, ${colorScheme}, breaks no rule that a machine can check`, async ({
      page,
      openApp,
    }, info) => {
      await page.emulateMedia({ colorScheme });
      await openApp(page, { file: projectFile(info, 'Lantern', 5000) });
      await settled(page);
      await showPage(page, name);
      for (const summary of await page.locator('details > summary').all()) await summary.click();
      const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
      const found = violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
      );
      expect(found).toEqual([]);
    });
  }
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the list of commands, ${colorScheme}, breaks no rule that a machine can check`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await page.keyboard.press('ControlOrMeta+k');
    await expect(page.getByRole('option', { name: 'Open', exact: true })).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
    ).toEqual([]);
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
  page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern', 5000) });
  await settled(page);
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  for (const name of ['Piece', 'Methods', 'Verdict', 'Joints', 'Test cuts', 'Explain'] as const) {
    await showPage(page, name);
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
