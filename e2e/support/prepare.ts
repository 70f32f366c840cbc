import { ensureBuilt } from '../../main/ready.mjs';

/** Runs once before all journeys: they use the program as it is built, and say on what it stood. */
export default async function prepare(): Promise<void> {
  await ensureBuilt();
  process.stdout.write('Hosts exercised: the local host in Chromium. Not exercised: the Electron shell.\n');
}
