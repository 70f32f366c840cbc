import { defineConfig, type Project } from '@playwright/test';
import type { HostOptions } from './e2e/support/app';
import { whyNoElectron } from './main/electron.mjs';
import { ensureChromium } from './main/ready.mjs';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** What a person asks of the host, besides what happens within the page. */
const OF_THE_HOST = /e2e\/(host|recovery|security)\//;

/** Of the local host alone, of Electron alone, and what takes long and asks nothing of the host. */
const NOT_ON_THE_DOUBLE = /security\/local-host\.spec\.ts$|e2e\/(electron|bench)\/|recovery\/soak\.spec\.ts$/;

/** `everything`: each journey on both hosts. `bench`: how soon the screen follows, and nothing else. */
const which = process.env.RINGTRUE_JOURNEYS;

export default defineConfig<object, HostOptions>({
  testDir: 'e2e',
  outputDir: 'test-results',
  globalSetup: './e2e/support/prepare.ts',
  fullyParallel: true,
  forbidOnly: true,
  // A check that passes only the second time is counted and named at the end of the run.
  retries: process.env.CI ? 1 : 0,
  workers: 2,
  timeout: 150_000,
  expect: { timeout: 30_000 },
  projects: which === 'bench' ? [{ name: 'speed', testMatch: /e2e\/bench\// }] : journeys(),
  use: {
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    // A picture of the page at every step takes longer than most journeys.
    trace: process.env.RINGTRUE_TRACE ? 'retain-on-failure' : 'on-first-retry',
    launchOptions: { executablePath: await ensureChromium(), args: FLAGS },
  },
});

function journeys(): Project<object, HostOptions>[] {
  return [
    {
      name: 'local host',
      testIgnore: /shell\.spec\.ts$|e2e\/(electron|bench)\//,
      use: { hostKind: 'local host' },
    },
    {
      name: 'shell on the electron double',
      testIgnore: NOT_ON_THE_DOUBLE,
      ...(which !== 'everything' && { testMatch: OF_THE_HOST }),
      use: { hostKind: 'electron double' },
    },
    // Where its runtime is; the run says so, or why not.
    ...(whyNoElectron() === null ? [{ name: 'electron itself', testMatch: /e2e\/electron\/.*\.spec\.ts$/ }] : []),
  ];
}
