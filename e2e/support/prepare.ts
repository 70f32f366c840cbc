import { presentRuntime } from '../../main/electron.mjs';
import { ensureBuilt } from '../../main/ready.mjs';

/** Runs once before all journeys: they use the program as it is built, and say on what it stood. */
export default async function prepare(): Promise<void> {
  await ensureBuilt();
  const say = (line: string) => process.stdout.write(`${line}\n`);
  const runtime =
    presentRuntime() === null ? 'whose runtime is not on this machine' : 'whose runtime is here but unused';
  say('Hosts exercised in Chromium: the local host; the built Electron shell and preload script on a stand-in for');
  say(`the module "electron". Not exercised: Electron itself, ${runtime}.`);
}
