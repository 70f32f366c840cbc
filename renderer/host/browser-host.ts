import type {
  FileToExport,
  FileToSave,
  Host,
  HostProblem,
  OpenedFile,
  RecentFile,
  SavedFile,
  SheetToPrint,
} from '../../main/contract/host';
import { exportSizeProblem } from '../../sim/export/file-size';
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

/** Asks for something that changes the disk, with the text of a project if there is one to send. */
function change<Answer>(path: string, headers: Record<string, string>, text = ''): Promise<Answer | HostProblem> {
  const sent = { 'Content-Type': 'text/plain; charset=utf-8', ...headers };
  return ask<Answer>(path, { method: 'POST', headers: sent, body: text });
}

async function save({ name, text, place, overwrite }: FileToSave): Promise<SavedFile | HostProblem> {
  const contents = new Blob([text], { type: 'application/json' });
  const tooLarge = sizeProblem(name, contents.size);
  if (tooLarge) return { problem: tooLarge };
  if (place !== null) {
    const headers = { 'X-Ringtrue-Place': place, ...(overwrite && { 'X-Ringtrue-Overwrite': 'yes' }) };
    return change<SavedFile>('/api/save', headers, text);
  }
  handOverDownload(name, contents);
  return { name, place: null };
}

async function printPdf({ name, html }: SheetToPrint): Promise<SavedFile | HostProblem> {
  try {
    const headers = { 'Content-Type': 'text/plain; charset=utf-8' };
    const response = await fetch('/api/print-pdf', { method: 'POST', headers, body: html });
    if (response.headers.get('content-type') === 'application/pdf') {
      handOverDownload(name, await response.blob());
      return { name, place: null };
    }
    if (response.headers.get('content-type')?.startsWith('application/json'))
      return (await response.json()) as HostProblem;
    return { problem: (await response.text()).trim() || HOST_GONE.problem };
  } catch {
    return HOST_GONE;
  }
}

const EXPORT_TYPES: Readonly<Record<string, string>> = {
  csv: 'text/csv;charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  json: 'application/json',
};

async function exportFile({ name, bytes }: FileToExport): Promise<SavedFile | HostProblem> {
  const problem = exportSizeProblem(name, bytes.length);
  if (problem) return { problem };
  const type = EXPORT_TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
  handOverDownload(name, new Blob([bytes], { type }));
  return { name, place: null };
}

/** The answer, or `instead` where there is none: what is only offered is no reason to complain. */
async function orElse<Answer extends object | null>(answer: Promise<Answer | HostProblem>, instead: Answer) {
  const given = await answer;
  return given !== null && 'problem' in given ? instead : (given as Answer);
}

async function text(path: string): Promise<string | null> {
  try {
    const answer: unknown = await (await fetch(path)).json();
    return typeof answer === 'string' ? answer : null;
  } catch {
    return null;
  }
}

/**
 * The pages in a browser, behind the local host: the files named at its starts are read and written through it, every
 * other file through the browser's own choosing and downloading.
 */
export function browserHost(): Host {
  return {
    kind: 'browser',
    openedAtStart: () => ask<OpenedFile | null>('/api/start-file'),
    open,
    // A browser tells nobody where a file lies.
    openDropped: async () => null,
    reopen: (place) => change<OpenedFile>('/api/reopen', { 'X-Ringtrue-Place': place }),
    async changedOnDisk(place) {
      const answer = await change<string | null>('/api/changed-on-disk', { 'X-Ringtrue-Place': place });
      return typeof answer === 'string' ? answer : null;
    },
    recent: () => orElse(ask<readonly RecentFile[]>('/api/recent'), []),
    save,
    keepRecovery({ name, text, place }) {
      // Headers hold ASCII only.
      const headers = { 'X-Ringtrue-Name': encodeURIComponent(name), 'X-Ringtrue-Place': place ?? '' };
      return change<null>('/api/keep-recovery', headers, text);
    },
    recovery: () => orElse(change<OpenedFile | null>('/api/recovery', {}), null),
    async dropRecovery() {
      await change<null>('/api/drop-recovery', {});
    },
    printPdf,
    exportFile,
    keptView: () => text('/api/kept-view'),
    async keepView(text) {
      await change<null>('/api/keep-view', {}, text);
    },
    // A browser's window has no menu of ours; the list of commands stands in the page.
    setMenu() {},
    onMenuChosen() {},
    onFileWanted() {},
    setProgress() {},
    setEdited(edited) {
      if (edited) window.addEventListener('beforeunload', guardUnload);
      else window.removeEventListener('beforeunload', guardUnload);
    },
  } satisfies Host;
}
