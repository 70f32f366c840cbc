import { expect, shellBehind, test } from '../support/app';

test('a page that crashes comes back with the edits, once they are wanted', async ({
  page,
  hostKind,
  openApp,
  keptAside,
}) => {
  await page.getByRole('textbox', { name: 'Title of the project' }).fill('Lamp column');
  await keptAside('Lamp column');
  const crashed = page.waitForEvent('crash');
  await page.goto('chrome://crash').catch(() => {});
  await crashed;
  const next = await page.context().newPage();
  if (hostKind === 'electron double') {
    const shell = shellBehind(page);
    await shell.pageIsGone(next);
    expect(shell.asked).toEqual([
      expect.stringContaining('The page stopped working. Edits up to about two seconds ago are kept'),
    ]);
  } else {
    await openApp(next);
  }
  const offer = next.getByRole('dialog', { name: 'Bring back unsaved edits?' });
  await offer.getByRole('button', { name: 'Bring back the edits' }).click();
  await expect(next).toHaveTitle('• Lamp column – Ringtrue');
});

test('a simulation that breaks takes no edits with it, and the next edit is simulated again', async ({
  page,
  complaints,
}) => {
  const title = page.getByRole('textbox', { name: 'Title of the project' });
  await title.fill('Lamp column');
  await expect.poll(() => page.workers().length).toBeGreaterThan(0);
  for (const worker of page.workers()) {
    await worker
      .evaluate(
        () =>
          void setTimeout(() => {
            throw new Error('broken by the test');
          }),
      )
      .catch(() => {});
  }
  await expect(title).toHaveValue('Lamp column');
  await page.getByRole('slider', { name: 'Show gap limit' }).focus();
  await page.keyboard.press('PageUp');
  await expect(page.getByRole('main')).toContainText(/\d+ in (100|1,000)/);
  await expect(page).toHaveTitle('• Lamp column – Ringtrue');
  complaints.length = 0;
});
