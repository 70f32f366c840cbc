import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test as base, type Dialog, expect, type Page } from '@playwright/test';
import { CHANNELS } from '../../main/contract/channels';
import type { LocalHost } from '../../main/local/local-host';
import { emptyStateFolder, startBuiltHost } from './built-host';
import { RunningShell } from './electron/running-shell';
import { projectText } from './project-file';

export { expect };

/** What the pages stand on: the local host, or the built Electron shell against a stand-in for the module `electron`. */
export type HostKind = 'local host' | 'electron double';

export interface TakenFile {
  /** The name that the program proposes. */
  offered: string;
  bytes: Buffer;
}

/** Verbs of the host that the page uses unasked: at its start, and when the focus comes back. */
const ADDRESS = { recovery: '/api/recovery', changedOnDisk: '/api/changed-on-disk' } as const;

type AskedAlone = keyof typeof ADDRESS;

/** What the answer changes is on the screen by then. */
function nextFrame(page: Page): Promise<void> {
  return page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))));
}

/** What a person does outside the page, on either host. */
export interface Desk {
  /** Chooses a file after the click on Open. */
  openChosen(page: Page, file: string): Promise<void>;
  /** Drags a file of the disk onto the window. */
  drop(page: Page, file: string): Promise<void>;
  /** Clicks on Save and lets it go to a file never saved before; gives the name proposed or taken and its text. */
  saveAnew(page: Page, path: string): Promise<string>;
  /** Lets a file that the program makes after `click` go to `path`, and gives what it holds. */
  takeFile(page: Page, click: () => Promise<void>, path: string): Promise<TakenFile>;
  /** Does something that makes the page ask the host by itself, and waits until it has its answer. */
  answered(page: Page, verb: AskedAlone, act: () => Promise<void>): Promise<void>;
  /** Tries to leave, and gives back whether the program asked first; goes on with leaving only if told to. */
  leave(page: Page, answer: 'stay' | 'leave'): Promise<'asked' | 'not asked'>;
}

interface AppFixtures {
  /** A page on which nothing is opened yet, for a test that begins with a file of its own or with the first start. */
  blank: Page;
  /** What the page complained of; every test ends by checking that it is empty. A test that provokes a complaint empties it. */
  complaints: string[];
  /** Where the program keeps what is the user's own; a test's own. */
  stateFolder: string;
  /** Opens the app in `page` anew, with a project file as if it had been named at the start. */
  openApp: (page: Page, options?: { file?: string }) => Promise<void>;
  /** Ends the program as a crash does, without a word to the page. */
  killApp: (page: Page) => Promise<void>;
  /** Waits until edits with these words are kept aside for a next start. */
  keptAside: (words: string) => Promise<void>;
  desk: Desk;
}

export interface HostOptions {
  hostKind: HostKind;
}

/** The program that each page stands on. */
const shells = new WeakMap<Page, RunningShell>();
const hosts = new WeakMap<Page, LocalHost>();

/** The shell behind a page; only in tests that run on it alone. */
export function shellBehind(page: Page): RunningShell {
  const shell = shells.get(page);
  if (!shell) throw new Error('No shell stands behind this page.');
  return shell;
}

async function dropFile(page: Page, file: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: [file], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await session.send('Input.dispatchDragEvent', { type, x: 400, y: 400, data });
  }
  await session.detach();
}

const deskOfLocalHost: Desk = {
  drop: dropFile,
  async openChosen(page, file) {
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await (await choosing).setFiles(file);
  },
  async saveAnew(page) {
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    return readFileSync(await (await downloading).path(), 'utf8');
  },
  async takeFile(page, click) {
    const downloading = page.waitForEvent('download');
    await click();
    const download = await downloading;
    return { offered: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  },
  async answered(page, verb, act) {
    const answer = page.waitForResponse((response) => response.url().endsWith(ADDRESS[verb]));
    await act();
    await (await answer).finished();
    await nextFrame(page);
  },
  async leave(page, answer) {
    let asked: 'asked' | 'not asked' = 'not asked';
    page.once('dialog', (dialog) => {
      asked = 'asked';
      void (answer === 'leave' ? dialog.accept() : dialog.dismiss());
    });
    // A reload leaves the page as closing it does, and Chromium asks before both. One that is refused never ends.
    const answered = page.waitForEvent('dialog').then((dialog) => dialog.page()?.evaluate('0'));
    await Promise.race([page.reload(), answered]).catch(() => {});
    page.removeAllListeners('dialog');
    return asked;
  },
};

const deskOfShell: Desk = {
  async drop(page, file) {
    await shellBehind(page).willDrop(file);
    await dropFile(page, file);
  },
  async openChosen(page, file) {
    await shellBehind(page).willAnswer('open', file);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
  },
  async saveAnew(page, path) {
    await shellBehind(page).willAnswer('save', path);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page).not.toHaveTitle(/^•/);
    return readFileSync(path, 'utf8');
  },
  async takeFile(page, click, path) {
    await shellBehind(page).willAnswer('save', path);
    await click();
    // It is moved there whole.
    await expect.poll(() => existsSync(path)).toBe(true);
    return { offered: shellBehind(page).offered.at(-1) ?? '', bytes: readFileSync(path) };
  },
  async answered(page, verb, act) {
    const times = (shell: RunningShell) => shell.answered.filter((channel) => channel === CHANNELS[verb]).length;
    const [shellBefore, before] = [shells.get(page), times(shellBehind(page))];
    await act();
    const shell = shellBehind(page);
    await expect.poll(() => times(shell)).toBeGreaterThan(shell === shellBefore ? before : 0);
    await nextFrame(page);
  },
  async leave(page, answer) {
    const shell = shellBehind(page);
    const before = shell.asked.length;
    await shell.willAnswer('messageBox', answer === 'leave' ? 1 : 0);
    await shell.closeWindow();
    return shell.asked.length > before ? 'asked' : 'not asked';
  },
};

/** The file comes after the page stands, and what is typed before would be gone with it. */
async function fileIsThere(page: Page, file: string): Promise<void> {
  const { title } = JSON.parse(readFileSync(file, 'utf8'));
  const isThere = async () => (await page.title()).includes(title) || (await page.getByRole('dialog').count()) > 0;
  await expect.poll(isThere).toBe(true);
}

/** Playwright's `test` with `page` showing the example, of few rings, from a file; each test on a host of its own. */
export const test = base.extend<AppFixtures, HostOptions>({
  hostKind: ['local host', { option: true, scope: 'worker' }],

  // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern even where nothing is taken.
  complaints: async ({}, use) => {
    const complaints: string[] = [];
    await use(complaints);
    expect(complaints, 'the page has no error and nothing of it is refused').toEqual([]);
  },

  // biome-ignore lint/correctness/noEmptyPattern: see above.
  stateFolder: async ({}, use) => {
    const folder = emptyStateFolder();
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },

  blank: async ({ context, complaints }, use) => {
    const page = await context.newPage();
    page.on('pageerror', (error) => complaints.push(error.stack ?? error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await use(page);
  },

  page: async ({ blank, openApp }, use, info) => {
    const file = info.outputPath('opened.ringtrue.json');
    writeFileSync(file, projectText('Lantern, few rings'));
    await openApp(blank, { file });
    await use(blank);
  },

  openApp: async ({ hostKind, stateFolder, killApp }, use) => {
    const ends: (() => Promise<unknown>)[] = [];
    await use(async (page, { file } = {}) => {
      await killApp(page);
      if (hostKind === 'electron double') {
        const shell = await RunningShell.start({ page, stateFolder, file });
        shells.set(page, shell);
        ends.push(() => shell.kill());
      } else {
        const host = await startBuiltHost(file, stateFolder);
        hosts.set(page, host);
        ends.push(async () => host.close());
        await page.goto(host.address('once'));
      }
      // Keys are heard once the page stands, whether or not a dialog is over it.
      await page.locator('main h1').waitFor();
      if (file !== undefined) await fileIsThere(page, file);
    });
    for (const end of ends) await end();
  },

  // biome-ignore lint/correctness/noEmptyPattern: see above.
  killApp: async ({}, use) =>
    use(async (page) => {
      // Chromium outlives the program here, so its page is taken away by hand; a page says nothing when it goes.
      const accept = (dialog: Dialog) => void dialog.accept();
      page.on('dialog', accept);
      await page.goto('about:blank');
      page.off('dialog', accept);
      await shells.get(page)?.kill();
      await hosts.get(page)?.close();
      shells.delete(page);
      hosts.delete(page);
    }),

  keptAside: ({ stateFolder }, use) => {
    const folder = join(stateFolder, 'recovery');
    const kept = () => readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
    return use((words) => expect.poll(() => (existsSync(folder) ? kept().join() : '')).toContain(words));
  },

  desk: ({ hostKind }, use) => use(hostKind === 'electron double' ? deskOfShell : deskOfLocalHost),
});
