import AxeBuilder from '@axe-core/playwright';
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

test('at twice the text size nothing runs out of the window, on any page', async ({ page, openApp }, info) => {
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
