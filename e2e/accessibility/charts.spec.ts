/** What every chart keeps to, with as many methods and sides as a project may have. */
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { limitHandle, PAGES, showPage, workedOut } from '../support/screen';

test.describe.configure({ timeout: 240_000 });

const MOST_MARKS = 400;

/** Shapes and words in each chart, drawing and sheet on the page, by its name. */
function marks(page: Page): Promise<[name: string, count: number][]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main figure, main .saved, main article svg')].map((part): [string, number] => [
      part.querySelector('h2, h3')?.textContent ?? part.getAttribute('aria-label') ?? part.className.toString(),
      part.querySelectorAll('circle, rect, path, line, polygon, polyline, text').length,
    ]),
  );
}

async function expectFewMarks(page: Page): Promise<void> {
  await workedOut(page);
  const found = await marks(page);
  expect(found.filter(([, count]) => count > MOST_MARKS)).toEqual([]);
}

test('no chart has more than 400 marks with six methods and sixty sides, on any page', async ({
  blank: page,
  openApp,
}, info) => {
  const largest = projectFile(info, 'Sixty sides, six ways', 2000, (project) => {
    const [first, second] = project.methods;
    if (!first || !second) throw new Error('The example has fewer than two methods.');
    const more = ['Fifth way', 'Sixth way'].map((name, k) => ({ ...(k === 0 ? first : second), name }));
    return {
      ...project,
      piece: { ...project.piece, sides: 60 },
      stock: { ...project.stock, stripLengthMm: 3000 },
      methods: [...project.methods, ...more],
    };
  });
  await openApp(page, { file: largest });
  for (const name of PAGES) {
    await showPage(page, name);
    await expectFewMarks(page);
  }
  await showPage(page, 'Verdict');
  for (const view of ['Running count', 'Bars']) {
    await page.getByRole('radio', { name: view }).check({ force: true });
    await expectFewMarks(page);
  }
  // Nothing of it counts if there was nothing to count.
  expect((await marks(page)).filter(([, count]) => count > 50).length).toBeGreaterThan(1);
});

test('nothing moves by itself where motion is to be reduced', async ({ blank: page, openApp }, info) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openApp(page, { file: projectFile(info, 'Still') });
  await page.evaluate(() => {
    const seen = new Set<string>();
    Object.assign(window, { seenMoving: seen });
    const look = (): void => {
      for (const animation of document.getAnimations()) {
        // What only waits, such as the softening of figures, takes no time once it comes.
        const { duration = 0 } = animation.effect?.getTiming() ?? {};
        const target = animation.effect instanceof KeyframeEffect ? animation.effect.target : null;
        if (Number(duration) > 0) seen.add(target?.outerHTML.slice(0, 100) ?? 'nothing');
      }
      requestAnimationFrame(look);
    };
    look();
  });
  for (const name of PAGES) {
    await showPage(page, name);
    await workedOut(page);
  }
  await showPage(page, 'Verdict');
  await limitHandle(page).focus();
  await page.keyboard.press('ArrowRight');
  await page
    .getByRole('button', { name: /^About / })
    .first()
    .click();
  await page.keyboard.press('Escape');
  await page.getByRole('textbox', { name: 'Widest gap where it is hidden' }).fill('0.6 mm');
  await workedOut(page);
  expect(await page.evaluate(() => [...(window as unknown as { seenMoving: Set<string> }).seenMoving])).toEqual([]);
});
