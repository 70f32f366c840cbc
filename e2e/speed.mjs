/** The second half of `npm run bench`: how soon the built pages follow a hand, one measurement at a time. */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { ensureBuilt, ensureChromium, ensureInstalled, orSayWhy, ROOT } from '../main/ready.mjs';

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureBuilt();
  await ensureChromium();
  const playwright = createRequire(import.meta.url).resolve('@playwright/test/cli');
  const { status } = spawnSync(process.execPath, [playwright, 'test', '--workers=1', '--reporter=line'], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, RINGTRUE_JOURNEYS: 'bench' },
  });
  process.exitCode = status ?? 1;
});
