import type { Host, HostProblem, OpenedFile, SavedFile } from '../../main/contract/host';
import { sizeProblem } from '../../sim/project/file-size';
import { chooseFile } from './choose-file';
import { handOverDownload } from './hand-over-download';

const HOST_GONE: HostProblem = {
  problem: 'The program behind this window has ended, so files cannot be reached. Start Ringtrue again.',
};

function guardUnload(event: BeforeUnloadEvent): void {
  event.preventDefault();
}

/** Asks the local host; a host that has ended or refuses is a problem in words. */
async function ask<Answer>(path: string, request?: RequestInit): Promise<Answer | HostProblem> {
  try {
    const response = await fetch(path, request);
    const isJson = response.headers.get('content-type')?.startsWith('application/json') ?? false;
    if (isJson) return (await response.json()) as Answer | HostProblem;
    return { problem: (await response.text()).trim() || HOST_GONE.problem };
  } catch {
    return HOST_GONE;
  }
}

async function open(): Promise<OpenedFile | HostProblem | null> {
  const file = await chooseFile();
  if (!file) return null;
  const tooLarge = sizeProblem(file.name, file.size);
  if (tooLarge) return { problem: tooLarge };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
    return { name: file.name, text, place: null };
  } catch {
    return { problem: `${file.name} could not be read as UTF-8 text. Choose a Ringtrue project file.` };
  }
}

async function save({ name, text, place }: Parameters<Host['save']>[0]): Promise<SavedFile | HostProblem> {
  const contents = new Blob([text], { type: 'application/json' });
  const tooLarge = sizeProblem(name, contents.size);
  if (tooLarge) return { problem: tooLarge };
  if (place !== null) {
    const headers = { 'Content-Type': 'text/plain; charset=utf-8', 'X-Ringtrue-Place': place };
    return ask<SavedFile>('/api/save', { method: 'POST', headers, body: text });
  }
  handOverDownload(name, contents);
  return { name, place: null };
}

/**
 * The pages in a browser, behind the local host: the file named at the start is read and written through it, every other
 * file through the browser's own choosing and downloading.
 */
export function browserHost(): Host {
  return {
    kind: 'browser',
    openedAtStart: () => ask<OpenedFile | null>('/api/start-file'),
    open,
    save,
    setEdited(edited) {
      if (edited) window.addEventListener('beforeunload', guardUnload);
      else window.removeEventListener('beforeunload', guardUnload);
    },
  } satisfies Host;
}
