/** Starts the speed measurements: gets the clone ready if need be, then runs the built programme. */
import { ensureBuilt, ensureInstalled, orSayWhy } from './ready.mjs';

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureBuilt();
  await import(new URL('../dist/main/bench.js', import.meta.url).href);
});
