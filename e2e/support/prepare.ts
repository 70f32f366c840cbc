import { whyNoElectron } from '../../main/electron.mjs';
import { ensureBuilt } from '../../main/ready.mjs';

/** Runs once before all journeys: they use the program as it is built, and say on what it stood. */
export default async function prepare(): Promise<void> {
  await ensureBuilt();
  const say = (line: string) => process.stdout.write(`${line}\n`);
  const why = whyNoElectron();
  say('Hosts exercised in Chromium: the local host; the built Electron shell and preload script on a stand-in for');
  say(
    why === null
      ? 'the module "electron". Electron itself as well, in the journeys of e2e/electron.'
      : `the module "electron". Not exercised: Electron itself, ${why}.`,
  );
}
