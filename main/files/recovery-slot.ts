import { mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { uptime } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { writeAtomically } from './write-atomically';

const KEPT_EDITS = z.strictObject({
  name: z.string(),
  text: z.string(),
  /** The file they belong to, and the mark of its bytes when they were made. */
  path: z.string().nullable(),
  mark: z.string().nullable(),
});

/** Unsaved edits, and the file they were made in. */
export type KeptEdits = z.infer<typeof KEPT_EDITS>;

const SLOT_NAME = /^edits-(\d+)\.json$/;

/**
 * Where one running program keeps its unsaved edits: a file that bears its process number, so that programs running side
 * by side keep out of each other's edits, and the next start can tell that a program ended and left some behind.
 */
export class RecoverySlot {
  readonly #folder: string;
  readonly #own: string;
  /** Keeping and dropping happen in the order asked for. */
  #last: Promise<unknown> = Promise.resolve();

  /** @param stateFolder the user's folder for this program; `recovery` is made in it when first needed */
  constructor(stateFolder: string) {
    this.#folder = join(stateFolder, 'recovery');
    this.#own = join(this.#folder, `edits-${process.pid}.json`);
  }

  /** @throws {FileProblem} when they cannot be kept */
  keep(edits: KeptEdits): Promise<void> {
    return this.#inOrder(async () => {
      // Where the folder cannot be made, writing says why.
      await mkdir(this.#folder, { recursive: true, mode: 0o700 }).catch(() => {});
      await writeAtomically(this.#own, JSON.stringify(edits));
    });
  }

  /**
   * The edits left by this program's former window, else the latest left by a program that ended; these are this
   * program's own from then on. They stay kept until `drop`.
   */
  take(): Promise<KeptEdits | null> {
    return this.#inOrder(async () => {
      const own = await readEdits(this.#own);
      if (own) return own;
      for (const path of await this.#leftBehind()) {
        const edits = await readEdits(path);
        // Only one of two programs started together gets to move it.
        if (edits && (await moved(path, this.#own))) return edits;
      }
      return null;
    });
  }

  drop(): Promise<void> {
    return this.#inOrder(() => rm(this.#own, { force: true }).catch(() => {}));
  }

  #inOrder<Value>(step: () => Promise<Value>): Promise<Value> {
    const next = this.#last.then(step, step);
    this.#last = next.catch(() => {});
    return next;
  }

  /** Slots of programs that run no more, the latest first. */
  async #leftBehind(): Promise<string[]> {
    const found: { path: string; mtimeMs: number }[] = [];
    for (const name of await readdir(this.#folder).catch(() => [])) {
      const owner = Number(SLOT_NAME.exec(name)?.[1]);
      const path = join(this.#folder, name);
      const mtimeMs = (await stat(path).catch(() => null))?.mtimeMs;
      if (!owner || mtimeMs === undefined) continue;
      // After a restart of the machine the number may belong to another program.
      const isFromBefore = mtimeMs < Date.now() - uptime() * 1000;
      if (isFromBefore || !isRunning(owner)) found.push({ path, mtimeMs });
    }
    return found.sort((a, b) => b.mtimeMs - a.mtimeMs).map(({ path }) => path);
  }
}

async function readEdits(path: string): Promise<KeptEdits | null> {
  try {
    return KEPT_EDITS.parse(JSON.parse(await readFile(path, 'utf8')));
  } catch {
    return null;
  }
}

async function moved(from: string, to: string): Promise<boolean> {
  return rename(from, to).then(
    () => true,
    () => false,
  );
}

function isRunning(processNumber: number): boolean {
  try {
    process.kill(processNumber, 0);
    return true;
  } catch (error) {
    // Somebody else's program may not be asked, but it runs.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
