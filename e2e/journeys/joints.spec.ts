import type { Locator, Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { settled, showPage, workedOut } from '../support/screen';

test.describe.configure({ timeout: 180_000 });

const WORK = { timeout: 120_000 };

const joint = (page: Page, number: number) =>
  page.getByRole('option', { name: new RegExp(`^Joint ${number}, between`) });

/** How far along the scale each row's dot stands, and what its words say; null for a dot outside its row. */
function dotsOfRows(figure: Locator): Promise<([x: number, told: number] | null)[]> {
  return figure.locator('.plotted-rows').evaluate((list) => {
    const middle = (dot: Element): { x: number; y: number } => {
      const { left, right, top, bottom } = dot.getBoundingClientRect();
      return { x: (left + right) / 2, y: (top + bottom) / 2 };
    };
    const dots = [...list.querySelectorAll('circle:not(.together)')].map(middle);
    return [...list.querySelectorAll('li')].map((row): [number, number] | null => {
      const { top, bottom } = row.getBoundingClientRect();
      const own = dots.filter(({ y }) => y > top && y < bottom);
      const words = [...row.querySelectorAll('.budget-figure')].filter(
        (words) => !/%|together/.test(words.textContent),
      );
      const [dot] = own;
      return own.length === 1 && dot
        ? [dot.x, Number.parseFloat(/[\d.]+/.exec(words[0]?.textContent ?? '')?.[0] ?? '')]
        : null;
    });
  });
}

test('each source has its dot in its own row, as far along the scale as its words say, in windows of any width', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Bread bin', 4_000) });
  await showPage(page, 'Joints');
  await workedOut(page);
  for (const width of [1280, 600]) {
    await page.setViewportSize({ width, height: 800 });
    for (const title of ['What each source of error brings', 'How accurate each thing would have to be']) {
      const figure = page.getByRole('figure').filter({ has: page.getByRole('heading', { name: title }) });
      const dots = await dotsOfRows(figure);
      expect(dots.length).toBeGreaterThan(1);
      expect(dots).not.toContain(null);
      const along = dots.flatMap((dot) => (dot ? [dot] : [])).toSorted(([, a], [, b]) => a - b);
      // Dots are placed by more digits than are told.
      along.slice(1).forEach(([x], i) => {
        expect(x).toBeGreaterThan((along[i]?.[0] ?? 0) - 3);
      });
    }
  }
});

test('a joint is looked at by keyboard, and is marked in the figures and the table too', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Bread bin', 4_000) });
  await showPage(page, 'Joints');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('of 100 pieces', WORK);
  const ring = page.getByRole('listbox', { name: /^Joints of the ring/ });
  await ring.getByRole('option', { selected: true }).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  await expect(joint(page, 2)).toBeFocused();
  const figures = page.getByRole('region', { name: 'The joint that is marked' });
  await expect(figures).toContainText('Joint 2, between staves 2 and 3');
  const name = await joint(page, 2).getAttribute('aria-label');
  const outside = /open (\S+ mm) outside/.exec(name ?? '')?.[1] ?? 'touches';
  await expect(figures.getByRole('definition').first()).toHaveText(outside);
  await page.getByText('One ring, joint by joint, as a table').click();
  const row = page.getByRole('region', { name: 'One ring, joint by joint, as a table' }).locator('tr[aria-current]');
  await expect(row).toContainText('2 and 3');
});

test('any ring of the run can be drawn by its number, and none beyond', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Bread bin', 4_000) });
  await showPage(page, 'Joints');
  await settled(page);
  await page.getByRole('radio', { name: /The ring with the number/ }).check({ force: true });
  const number = page.getByRole('textbox', { name: 'Number of the ring' });
  await number.fill('4000');
  await expect(page.getByText(/^Ring 4,000 (shows|will not close|: every)/)).toBeVisible();
  await number.fill('4001');
  await number.blur();
  await expect(number).toHaveAccessibleDescription(/Ring 4,001 is not one of the 4,000 simulated/);
});

test('the best aim is set in one step, which undo takes back', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Bread bin', 4_000) });
  await showPage(page, 'Joints');
  const aim = page.getByRole('button', { name: /^Aim the tilt at [+-]\d/ });
  await expect(aim).toBeVisible(WORK);
  const degrees = /at (\S+)°/.exec((await aim.textContent()) ?? '')?.[1];
  await aim.click();
  await expect(page.getByText(`The tilt is aimed at ${degrees}°`)).toBeVisible();
  await expect(page).toHaveTitle(/^• /);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(aim).toBeVisible();
  await expect(page).not.toHaveTitle(/^• /);
});
