import { test as base, expect, type Page } from '@playwright/test';
import type { LocalHost } from '../../main/local/local-host';
import { startBuiltHost } from './built-host';

export { expect };

interface AppFixtures {
  /** What the page complained of; every test ends by checking that it is empty. A test that provokes a complaint empties it. */
  complaints: string[];
  /** Opens the app in `page` anew, with a project file as if it had been named at the start. */
  openApp: (page: Page, options?: { file?: string }) => Promise<void>;
}

interface AppWorkerFixtures {
  host: LocalHost;
}

/** Playwright's `test` with `page` standing at the app's first screen, on a local host of its own. */
export const test = base.extend<AppFixtures, AppWorkerFixtures>({
  host: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern even where nothing is taken.
    async ({}, use) => {
      const host = await startBuiltHost();
      await use(host);
      await host.close();
    },
    { scope: 'worker' },
  ],

  // biome-ignore lint/correctness/noEmptyPattern: see above.
  complaints: async ({}, use) => {
    const complaints: string[] = [];
    await use(complaints);
    expect(complaints, 'the page has no error and nothing of it is refused').toEqual([]);
  },

  page: async ({ page, host, complaints }, use) => {
    page.on('pageerror', (error) => complaints.push(error.stack ?? error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await page.goto(host.address('once'));
    await use(page);
  },

  // biome-ignore lint/correctness/noEmptyPattern: see above.
  openApp: async ({}, use) => {
    const hosts: LocalHost[] = [];
    await use(async (page, { file } = {}) => {
      const host = await startBuiltHost(file);
      hosts.push(host);
      await page.goto(host.address('once'));
    });
    for (const host of hosts) await host.close();
  },
});
