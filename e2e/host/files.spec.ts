import { readFileSync, writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';

function titleField(page: Page) {
  return page.getByRole('textbox', { name: 'Title of the project' });
}

test('a file named at the start is shown, and saving writes it back', async ({ blank: page, openApp }, info) => {
  const file = projectFile(info, 'Umbrella stand');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Umbrella stand');
  await titleField(page).fill('Umbrella stand, oak');
  await page.keyboard.press('Control+s');
  await expect(page.getByText('piece.ringtrue.json is saved.')).toBeAttached();
  expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Umbrella stand, oak');
  await page.reload();
  await expect(titleField(page)).toHaveValue('Umbrella stand, oak');
});

test('a wrong file named at the start is refused in sentences, and is left as it is', async ({
  blank: page,
  openApp,
}, info) => {
  const file = projectFile(info, 'Umbrella stand');
  const wrong = readFileSync(file, 'utf8').replace(/"thicknessMm": [\d.]+/, '"thicknessMm": 0');
  writeFileSync(file, wrong);
  await openApp(page, { file });
  await expect(page.getByRole('dialog')).toContainText('Thickness 0 mm is not above 0.');
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(titleField(page)).not.toHaveValue('Umbrella stand');
  expect(readFileSync(file, 'utf8')).toBe(wrong);
});

test('a file chosen by the person is shown, and saving gives it back changed', async ({ page, desk }, info) => {
  const file = projectFile(info, 'Bread bin');
  await desk.openChosen(page, file);
  await expect(titleField(page)).toHaveValue('Bread bin');
  await titleField(page).fill('Bread bin, pine');
  const text = await desk.saveAnew(page, file);
  expect(JSON.parse(text).title).toBe('Bread bin, pine');
  await expect(page).toHaveTitle('Bread bin, pine – Ringtrue');
});

test('a file dropped on the window is shown, and saving gives it back: in its place where the window knows it', async ({
  page,
  desk,
  hostKind,
}, info) => {
  const file = projectFile(info, 'Bread bin');
  await desk.drop(page, file);
  await expect(titleField(page)).toHaveValue('Bread bin');
  await titleField(page).fill('Bread bin, pine');
  if (hostKind === 'electron double') {
    // Nobody is asked where to.
    await page.keyboard.press('Control+s');
    await expect(page.getByText('piece.ringtrue.json is saved.')).toBeAttached();
    expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Bread bin, pine');
    expect(JSON.parse(readFileSync(file.replace('piece.', 'piece.previous.'), 'utf8')).title).toBe('Bread bin');
  } else {
    const before = readFileSync(file, 'utf8');
    expect(JSON.parse(await desk.saveAnew(page, file)).title).toBe('Bread bin, pine');
    expect(readFileSync(file, 'utf8')).toBe(before);
  }
});

test('a dropped file asks before edits are lost, and is refused where it is no project', async ({
  page,
  desk,
}, info) => {
  const file = projectFile(info, 'Bread bin');
  await titleField(page).fill('Edited, not saved');
  page.once('dialog', (dialog) => void dialog.dismiss());
  await desk.drop(page, file);
  await expect(titleField(page)).toHaveValue('Edited, not saved');
  page.once('dialog', (dialog) => void dialog.accept());
  const notes = info.outputPath('notes.txt');
  writeFileSync(notes, 'Buy glue.');
  await desk.drop(page, notes);
  await expect(page.getByRole('dialog')).toContainText('notes.txt');
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(titleField(page)).toHaveValue('Edited, not saved');
});

test('a project that was never saved asks where to, by a name made of its title', async ({
  blank: page,
  openApp,
  desk,
}, info) => {
  await openApp(page);
  await titleField(page).fill('Lamp column');
  const text = await desk.saveAnew(page, info.outputPath('lamp-column.ringtrue.json'));
  expect(JSON.parse(text).title).toBe('Lamp column');
  await expect(page.getByText('lamp-column.ringtrue.json is saved.')).toBeAttached();
});

test('leaving asks only while there are edits, and stays when told to', async ({ page, desk }) => {
  await titleField(page).fill('Changed');
  expect(await desk.leave(page, 'stay')).toBe('asked');
  await expect(titleField(page)).toHaveValue('Changed');
  expect(await desk.leave(page, 'leave')).toBe('asked');
});

test('leaving asks nothing when nothing was changed', async ({ page, desk }) => {
  await expect(titleField(page)).toBeVisible();
  expect(await desk.leave(page, 'leave')).toBe('not asked');
});

test('a file that another program changed is written only after a choice', async ({
  blank: page,
  openApp,
  complaints,
}, info) => {
  const file = projectFile(info, 'Umbrella stand');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Umbrella stand');
  await titleField(page).fill('Umbrella stand, ours');
  const theirs = readFileSync(file, 'utf8').replace('Umbrella stand', 'Umbrella stand, theirs');
  writeFileSync(file, theirs);
  await page.keyboard.press('Control+s');
  const dialog = page.getByRole('dialog', { name: 'Not saved: the file is not as it was' });
  await expect(dialog).toContainText('piece.ringtrue.json was changed by another program');
  expect(readFileSync(file, 'utf8')).toBe(theirs);
  await dialog.getByRole('button', { name: 'Write over it' }).click();
  await expect(page).toHaveTitle('Umbrella stand, ours – Ringtrue');
  expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Umbrella stand, ours');
  expect(readFileSync(file.replace('piece.', 'piece.previous.'), 'utf8')).toBe(theirs);
  // A browser notes on its console that the local host refused.
  expect(complaints.filter((complaint) => !complaint.includes('409 (Conflict)'))).toEqual([]);
  complaints.length = 0;
});

test('a file that another program changed is told of when the window gets the focus back', async ({
  blank: page,
  openApp,
  desk,
}, info) => {
  const file = projectFile(info, 'Umbrella stand');
  await openApp(page, { file });
  await expect(titleField(page)).toHaveValue('Umbrella stand');
  // Chromium under test holds its page focused always, so the event is given by hand.
  const comeBack = () =>
    desk.answered(page, 'changedOnDisk', () => page.evaluate(() => void window.dispatchEvent(new Event('focus'))));
  const dialog = page.getByRole('dialog', { name: 'The file is not as it was' });
  const changeElsewhere = async (title: string) => {
    writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), title }));
    await comeBack();
    await expect(dialog).toContainText('piece.ringtrue.json was changed by another program');
  };
  await comeBack();
  await expect(dialog).toBeHidden();
  await changeElsewhere('Umbrella stand, theirs');
  await expect(dialog).not.toContainText('Your edits are given up.');
  await dialog.getByRole('button', { name: 'Open it as it is now' }).click();
  await expect(page).toHaveTitle('Umbrella stand, theirs – Ringtrue');
  await titleField(page).fill('Umbrella stand, ours');
  await changeElsewhere('Umbrella stand, theirs again');
  await expect(dialog).toContainText('Your edits are given up.');
  await dialog.getByRole('button', { name: 'Keep what is here' }).click();
  await comeBack();
  await expect(dialog).toBeHidden();
  await expect(page).toHaveTitle('• Umbrella stand, ours – Ringtrue');
  expect(JSON.parse(readFileSync(file, 'utf8')).title).toBe('Umbrella stand, theirs again');
});

test('a file opened before is among the recent ones at the next start', async ({ blank: page, openApp }, info) => {
  await openApp(page, { file: projectFile(info, 'Umbrella stand') });
  await expect(titleField(page)).toHaveValue('Umbrella stand');
  await openApp(page);
  await page.getByRole('button', { name: 'Recent' }).click();
  await page.getByRole('dialog', { name: 'Recent files' }).getByRole('button', { name: 'piece.ringtrue.json' }).click();
  await expect(titleField(page)).toHaveValue('Umbrella stand');
});
