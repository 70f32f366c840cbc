import { join } from 'node:path';
import { ROOT } from '../../main/ready.mjs';
import { expect, test } from '../support/app';

/** A plain test run leaves the tree as it was; `RINGTRUE_PICTURES=1` renews the pictures that the README shows. */
const renewed = process.env.RINGTRUE_PICTURES === '1';

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the first screen, ${colorScheme}, answers a question before anything is typed`, async ({ page }, info) => {
    await page.emulateMedia({ colorScheme });
    await expect(page.getByRole('main')).toContainText(/\d+ in (100|1,000)/);
    await page.getByRole('button', { name: 'Put this away' }).click();
    await expect(page.getByText('Settled.', { exact: true })).toBeVisible({ timeout: 120_000 });
    const name = `first-screen-${colorScheme}.png`;
    const path = renewed ? join(ROOT, 'e2e', 'pictures', name) : info.outputPath(name);
    const picture = await page.screenshot({ path, animations: 'disabled' });
    expect(picture.length).toBeGreaterThan(10_000);
  });
}
