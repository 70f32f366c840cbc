import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { figures, figuresTable, limitHandle, settled, showPage } from '../support/screen';

test.describe.configure({ timeout: 180_000 });

test('the first start answers with the example, and every chart has its table', async ({ blank: page, openApp }) => {
  await openApp(page);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('in 100');
  await settled(page);
  await expect(figuresTable(page).getByRole('row')).toHaveCount(5);
  for (const title of ['Chance of a good piece against the limit', 'The widest gap that shows, ring by ring']) {
    await page.getByText(`${title}, as a table`, { exact: true }).click();
    await expect(
      page
        .getByRole('region', { name: `${title}, as a table` })
        .getByRole('row')
        .nth(1),
    ).toBeVisible();
  }
  // Nothing may be drawn that the eye cannot take in: lines, bands and dots of all charts together.
  const marks = await page.locator('.chart-frame :is(.recharts-line-curve, .recharts-area-area, circle)').count();
  expect(marks).toBeGreaterThan(200);
  expect(marks).toBeLessThanOrEqual(400);
});

/** What the page says of the next work; so few rings may be done before anybody could look. */
function nextRefining(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        new MutationObserver((_, observer) => {
          const words = document.querySelector('.work-mark span')?.textContent ?? '';
          if (!/^(Quick preview|Refining)/.test(words)) return;
          observer.disconnect();
          resolve(words);
        }).observe(document.body, { subtree: true, childList: true, characterData: true });
      }),
  );
}

test('a change of method shows a preview at once and moves the verdict', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  const before = await figures(page);
  await showPage(page, 'Methods');
  const method = page.getByRole('group', { name: 'Method A: Marked line' });
  await method.getByRole('button', { name: 'How the tilt is set' }).click();
  const seen = nextRefining(page);
  await page.getByRole('option', { name: 'Scale on the saw' }).click();
  expect(await seen).toMatch(/^(Quick preview|Refining)/);
  await showPage(page, 'Verdict');
  await settled(page);
  const after = await figures(page);
  expect(after[1]).not.toBe(before[1]);
  expect(after[2]).toBe(before[2]);
  await page.keyboard.press('Control+z');
  await settled(page);
  expect(await figures(page)).toEqual(before);
});

test('every figure behind a choice can be opened, says where it comes from, and becomes one’s own', async ({
  page,
}) => {
  await showPage(page, 'Methods');
  const method = page.getByRole('group', { name: 'Method A: Marked line' });
  await method.getByText('Figures', { exact: true }).first().click();
  const shared = method.getByRole('textbox', { name: 'Shared tilt error' });
  await expect(shared).toHaveAccessibleDescription(/assumed/);
  await shared.fill('0.07');
  await expect(shared).toHaveAccessibleDescription(/typed in/);
  await expect(method.getByRole('button', { name: 'Own figures How the tilt is set' })).toBeVisible();
});

test('a dragged limit moves sentences and figures, and is one undo step', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  const sentence = page.getByRole('heading', { level: 1 });
  const [before, beforeFigures] = [await sentence.textContent(), await figures(page)];
  const handle = limitHandle(page);
  const field = page.getByRole('textbox', { name: 'Widest gap where it shows' });
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (!box) throw new Error('The handle is not on the screen.');
  const [x, y] = [box.x + box.width / 2, box.y + 14];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 40, y, { steps: 5 });
  await page.mouse.move(x - 80, y, { steps: 5 });
  await page.mouse.up();
  const dragged = Number(await handle.getAttribute('aria-valuenow'));
  expect(dragged).toBeLessThan(0.15);
  await expect(field).toHaveValue(`${dragged}`);
  expect((await figures(page))[0]).toContain(`${dragged.toFixed(2)}`);
  await settled(page);
  expect(await sentence.textContent()).not.toBe(before);
  await page.keyboard.press('Control+z');
  await expect(handle).toHaveAttribute('aria-valuenow', '0.15');
  await settled(page);
  expect(await figures(page)).toEqual(beforeFigures);
});

test('the gaps can be seen as dots, as a running count and as bars, each with its table', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  const title = 'The widest gap that shows, ring by ring';
  const chart = page.getByRole('figure').filter({ has: page.getByRole('heading', { name: title }) });
  await chart.getByText(`${title}, as a table`, { exact: true }).click();
  const heads = { '50 dots': 'Dots at or under', 'Running count': 'Rings at or under', Bars: 'Gap, rings of 100' };
  for (const [view, head] of Object.entries(heads)) {
    await chart.getByRole('radio', { name: view }).check({ force: true });
    await expect(chart.getByRole('columnheader', { name: head })).toBeVisible();
    await expect(chart.getByRole('img', { name: /Marked line: .* in 100|Marked line: \d+ of 50/ })).toBeVisible();
  }
  // Every ring stands in one bar.
  const cells = await chart.getByRole('row').locator('td:nth-child(2)').allInnerTexts();
  const sum = cells.reduce((total, text) => total + Number(text), 0);
  expect(sum).toBeGreaterThan(99);
  expect(sum).toBeLessThan(101);
});

test('methods are held against the best, then against another, and the lead is said to hinge on something', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  await expect(page.getByRole('heading', { name: 'Better or worse than “Fixed stop, tested ring”' })).toBeVisible();
  await page.getByRole('button', { name: 'Held against' }).click();
  await page.getByRole('option', { name: 'Fixed stop', exact: true }).click();
  const chart = page.getByRole('figure').filter({ hasText: 'Better or worse than “Fixed stop”' });
  const row = chart.getByRole('listitem').filter({ hasText: 'Marked line' });
  await expect(row).toContainText(/Good pieces of 100 \+\d+(\.\d)? \(/);
  // More good pieces than the one it is held against: its mark stands right of the middle, in its row.
  const mark = chart.locator('.column-plot').first().locator('.difference-mark').first();
  const middle = chart.locator('.column-plot').first().locator('.edge-line').first();
  const [rowBox, markBox, middleBox] = [await row.boundingBox(), await mark.boundingBox(), await middle.boundingBox()];
  if (!rowBox || !markBox || !middleBox) throw new Error('The row has no mark.');
  expect(markBox.x).toBeGreaterThan(middleBox.x);
  expect(markBox.y).toBeGreaterThan(rowBox.y);
  expect(markBox.y + markBox.height).toBeLessThan(rowBox.y + rowBox.height);
  await chart.getByText(/as a table$/).click();
  await expect(chart.getByRole('row').filter({ hasText: 'Marked line' })).toContainText(/\+\d+(\.\d)? in 100/);
  await expect(page.getByText(/stays ahead of “Marked line” as long as its .+ stays under .+ \(now /)).toBeVisible();
});

test('the limit moves by keyboard, each press held down one undo step', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  const handle = limitHandle(page);
  await handle.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(handle).toHaveAttribute('aria-valuetext', '0.17 mm');
  await page.keyboard.press('PageDown');
  await expect(handle).toHaveAttribute('aria-valuetext', '0.12 mm');
  await page.keyboard.press('Home');
  await expect(handle).toHaveAttribute('aria-valuetext', '0.00 mm');
  for (const text of ['0.12 mm', '0.17 mm', '0.16 mm', '0.15 mm']) {
    await page.keyboard.press('Control+z');
    await expect(handle).toHaveAttribute('aria-valuetext', text);
  }
  await page.keyboard.press('Control+Shift+z');
  await expect(handle).toHaveAttribute('aria-valuetext', '0.16 mm');
});

test('work that takes long can be stopped, keeps what is done, and is taken up again', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await page.getByText('Simulation', { exact: true }).click();
  await page.getByRole('textbox', { name: 'Rings for each method' }).fill('5000000');
  await expect(page.getByText(/^Refining: [\d,]+ of 20,000,000 rings\.$/)).toBeVisible({ timeout: 60_000 });
  const stoppedMs = await page.evaluate(async () => {
    const isStopped = (): boolean => document.body.textContent.includes('Stopped; the figures rest on');
    const startMs = performance.now();
    [...document.querySelectorAll('button')].find((button) => button.textContent === 'Stop')?.click();
    while (!isStopped()) await new Promise((resolve) => setTimeout(resolve, 5));
    return performance.now() - startMs;
  });
  // Far less than the minutes the work would take; merging what is done comes on top of hearing the wish.
  expect(stoppedMs).toBeLessThan(5000);
  await expect(page.getByRole('button', { name: 'Go on' })).toBeVisible();
  expect((await figures(page)).slice(1).every((row) => /\d/.test(row))).toBe(true);
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText(/^(Quick preview|Refining)/)).toBeVisible();
});

test('a stop is obeyed before the figures of what was done are summed up', async ({ blank: page, openApp }, info) => {
  const five = projectFile(info, 'Five long runs', 100_000, (project) => {
    const [first] = project.methods;
    return first ? { ...project, methods: [...project.methods, { ...first, name: 'Marked line again' }] } : project;
  });
  await openApp(page, { file: five });
  await expect(page.getByText(/Refining: [\d,]+ of 500,000 rings/)).toBeVisible({ timeout: 60_000 });
  const [first, last] = await page.evaluate(
    () =>
      new Promise<[string, string]>((resolve) => {
        const mark = document.querySelector('.work-mark');
        const stop = [...(mark?.querySelectorAll('button') ?? [])].find((button) => button.textContent === 'Stop');
        let firstWords = '';
        new MutationObserver((_, observer) => {
          const words = mark?.textContent ?? '';
          if (words.startsWith('Stopped')) firstWords ||= words;
          if (!words.startsWith('Stopped; the figures rest on')) return;
          observer.disconnect();
          resolve([firstWords, words]);
        }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
        stop?.click();
      }),
  );
  expect(first).not.toBe(last);
  await expect(page.getByRole('button', { name: 'Go on' })).toBeVisible();
  await expect(page.getByRole('table').first()).toContainText('in 100');
});

test('a value that cannot be used is answered beside its field, and the last figures stay', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Lantern') });
  await settled(page);
  const before = await figures(page);
  await showPage(page, 'Piece');
  const thickness = page.getByRole('textbox', { name: 'Thickness', exact: true });
  await thickness.fill('0');
  await thickness.blur();
  await expect(thickness).toHaveAccessibleDescription(/Thickness 0 mm is not above 0\./);
  await showPage(page, 'Verdict');
  await expect(page.getByText('A value cannot be used; the figures are those from before it.')).toBeVisible();
  expect(await figures(page)).toEqual(before);
  await page.keyboard.press('Control+z');
  await settled(page);
});
