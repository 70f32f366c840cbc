import { expect, test } from '../support/app';
import { showPage } from '../support/screen';

test('the first steps are shown at the first start, put away, found again, and stay put away at the next start', async ({
  blank: page,
  openApp,
}) => {
  await openApp(page);
  const steps = page.getByRole('region', { name: 'How to begin' });
  await expect(steps).toBeVisible();
  await expect(
    page.getByRole('status').filter({ hasText: 'How to begin stands right after the answer.' }),
  ).toBeAttached();
  // It takes no focus, and the answer stands above it, uncovered.
  expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
  const answer = await page.getByRole('heading', { level: 1 }).boundingBox();
  const place = await steps.boundingBox();
  expect(place?.y).toBeGreaterThanOrEqual((answer?.y ?? 0) + (answer?.height ?? 0));

  await page.getByRole('button', { name: 'Put this away' }).press('Enter');
  await expect(steps).toHaveCount(0);
  await expect(page.getByRole('main')).toBeFocused();

  await page.keyboard.press('F1');
  await expect(steps).toBeFocused();
  await page.getByRole('button', { name: 'Put this away' }).click();
  await showPage(page, 'Piece');
  await page.getByRole('button', { name: 'Help' }).click();
  await expect(steps).toBeFocused();
  await page.getByRole('button', { name: 'Put this away' }).click();
  await expect(steps).toHaveCount(0);

  await openApp(page);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(steps).toHaveCount(0);
});

test('the first steps lead to the page to begin with', async ({ blank: page, openApp }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'on the page Piece' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Tilt the blade');
});
