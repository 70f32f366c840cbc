/** What reaches the one window from outside while it is open: only the desktop shell has that. */
import { dirname } from 'node:path';
import { expect, shellBehind, test } from '../support/app';
import { projectFile } from '../support/project-file';

test('starting the program again with a file opens it in the window that is there', async ({ page }, info) => {
  const file = projectFile(info, 'Umbrella stand');
  const title = page.getByRole('textbox', { name: 'Title of the project' });
  await title.fill('Edited, not saved');
  const shell = shellBehind(page);
  const askedFirst = page.waitForEvent('dialog');
  await shell.startAgain(['piece.ringtrue.json'], dirname(file));
  await (await askedFirst).dismiss();
  await expect.poll(() => shell.did).toContain('focused');
  await expect(title).toHaveValue('Edited, not saved');
  const askedAgain = page.waitForEvent('dialog');
  await shell.startAgain([file], '/');
  await (await askedAgain).accept();
  await expect(title).toHaveValue('Umbrella stand');
  await expect.poll(() => shell.did).toContain(`recent document ${file}`);
  await shell.startAgain(['missing.ringtrue.json'], dirname(file));
  await expect(page.getByRole('dialog')).toContainText('missing.ringtrue.json does not exist.');
});

test('a page that does not answer is waited for, or ended and opened again', async ({ page }) => {
  const shell = shellBehind(page);
  await shell.willAnswer('messageBox', 0);
  await shell.pageHangs();
  expect(shell.asked).toEqual([expect.stringContaining('The page does not answer.')]);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await shell.willAnswer('messageBox', 1);
  await shell.willAnswer('messageBox', 0);
  const loaded = shell.nextLoad();
  await shell.pageHangs();
  expect(shell.asked.at(-1)).toContain('The page stopped working.');
  await loaded;
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
});

test('long work shows how far it has come beside the program, and then no more', async ({
  blank: page,
  openApp,
}, info) => {
  await openApp(page, { file: projectFile(info, 'Long', 1_000_000) });
  const shell = shellBehind(page);
  await expect.poll(() => shell.did, { timeout: 60_000 }).toContain('progress');
  await page.getByRole('button', { name: 'Stop' }).first().click();
  await expect(page.getByText('Stopped; the figures rest on the rings done so far.')).toBeVisible();
});
