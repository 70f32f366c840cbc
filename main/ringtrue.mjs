/** Starts the command line: gets the clone ready if need be, then hands over in this same process. */
import { ensureBuilt, ensureInstalled, orSayWhy } from './ready.mjs';

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureBuilt();
  // npm moves to the clone's folder before it runs a script; file names are meant from where the person stood.
  if (process.env.npm_lifecycle_event === 'ringtrue' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
  const program = new URL('../dist/main/ringtrue.js', import.meta.url).href;
  const { runCommand } = await import(program);
  process.exitCode = await runCommand(process.argv.slice(2));
});
