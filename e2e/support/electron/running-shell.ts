import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import type { Frame, Page, Request, Route } from '@playwright/test';
import type { PDF_OPTIONS } from '../../../main/print/pdf-options';
import { ROOT } from '../../../main/ready.mjs';
import { CHANNEL_BINDING, DROPPING, preloadScript, TO_PAGE } from './preload-stand-in';

/** Chromium knows no `app:` addresses, so the pages stand under one of its own that nobody serves. */
const SHOWN_ORIGIN = 'https://ringtrue.test';
const SHELL_ORIGIN = 'app://ringtrue';

const asShown = (address: string) => address.replace(SHELL_ORIGIN, SHOWN_ORIGIN);
const asShell = (address: string) => address.replace(SHOWN_ORIGIN, SHELL_ORIGIN);

const PERMISSIONS = ['geolocation', 'notifications', 'clipboard-read', 'clipboard-write', 'camera', 'microphone'];

interface FromShell {
  what: string;
  about?: unknown;
  id?: number;
  error?: string;
}

interface ToPage {
  channel: string;
  payload: unknown[];
}

interface PrintJob {
  job: number;
  url: string;
  options: typeof PDF_OPTIONS;
  preferences: { javascript?: boolean };
}

export interface ShellOptions {
  page: Page;
  stateFolder: string;
  file?: string | undefined;
  /** The folder that holds main/ and renderer/ as built. */
  built?: string;
}

/** The shell that a page belongs to just now; a page is handed on when the shell is started anew. */
const shellOf = new WeakMap<Page, RunningShell>();

/** The built shell in a process of its own, with its one window shown in a page of Chromium. */
export class RunningShell {
  readonly #child: ChildProcess;
  readonly #waiting = new Map<number, (answer: FromShell) => void>();
  /** By address: what the shell said to the page that wanted it. */
  readonly #wantedWindows = new Map<string, Promise<string>>();
  #lastId = 0;
  /** The page is ready to be told what the shell loads. */
  #takenOver: Promise<void>;
  #isLoading = false;
  #hasLoaded = () => {};
  #window: Record<string, unknown> = {};
  page: Page;
  /** Questions that the shell asked the person. */
  readonly asked: string[] = [];
  /** Names under which the shell offered to save. */
  readonly offered: string[] = [];
  /** Whatever else the shell did, in order: "sandbox", "shown", "closed". */
  readonly did: string[] = [];
  /** Channels on which the page asked and has its answer, in order. */
  readonly answered: string[] = [];
  /** Addresses that were refused. */
  readonly refused: string[] = [];
  readonly ended: Promise<number | null>;

  private constructor(options: ShellOptions) {
    this.page = options.page;
    const built = options.built ?? join(ROOT, 'dist');
    const register = new URL('./register.mjs', import.meta.url).href;
    this.#child = fork(join(built, 'main', 'shell.js'), options.file === undefined ? [] : [options.file], {
      execArgv: ['--import', register],
      env: { ...process.env, RINGTRUE_STATE: options.stateFolder },
      serialization: 'advanced',
    });
    this.ended = once(this.#child, 'exit').then(([code]) => {
      for (const hear of this.#waiting.values()) hear({ what: 'answer', error: 'The shell has ended.' });
      return code as number | null;
    });
    this.#takenOver = this.#takeOver(options.page, join(built, 'main', 'preload.cjs'));
    this.#child.on('message', (message) => this.#hear(message as FromShell));
  }

  /** Starts the shell and waits until its page is loaded. */
  static async start(options: ShellOptions): Promise<RunningShell> {
    const shell = new RunningShell(options);
    const loaded = shell.nextLoad();
    await shell.#takenOver;
    await Promise.race([loaded, shell.#endedEarly()]);
    return shell;
  }

  /** What the window was made with. */
  get windowOptions(): Record<string, unknown> {
    return this.#window;
  }

  nextLoad(): Promise<void> {
    return new Promise((resolve) => {
      this.#hasLoaded = resolve;
    });
  }

  /** What the person will answer when the dialog comes: a path, null for a change of mind, or the number of a button. */
  async willAnswer(dialog: 'open' | 'save' | 'messageBox', value: string | number | null): Promise<void> {
    await this.#ask('answer', { dialog, value });
  }

  /** Chooses from the window's own menu, and gives back whether there was such an item and it could be chosen. */
  async chooseInMenu(head: string, label: string): Promise<'chosen' | 'greyed out' | 'absent'> {
    return (await this.#ask('menu chosen', { head, label })) as 'chosen' | 'greyed out' | 'absent';
  }

  /** Clicks the window's close button; true when the program ended. */
  async closeWindow(): Promise<boolean> {
    await this.#ask('close').catch(() => {});
    const ended = this.ended.then(() => true);
    return Promise.race([ended, new Promise<boolean>((resolve) => setTimeout(resolve, 1500, false))]);
  }

  /** The page's process died: the shell is told, and what it loads next comes into `page`. */
  async pageIsGone(page: Page): Promise<void> {
    const loaded = this.nextLoad();
    this.#takenOver = this.#takeOver(page, join(ROOT, 'dist', 'main', 'preload.cjs'));
    await this.#takenOver;
    await this.#ask('page gone');
    await loaded;
  }

  /** A file is about to be dropped on the window. */
  async willDrop(file: string): Promise<void> {
    await this.page.evaluate(([name, detail]) => dispatchEvent(new CustomEvent(name, { detail })), [
      DROPPING,
      [file],
    ] as const);
  }

  /** The program was started again, with these words, while it runs. */
  async startAgain(words: readonly string[], folder: string): Promise<void> {
    await this.#ask('second instance', { words: ['ringtrue', ...words], folder });
  }

  /** The page's process hangs: the shell is told. */
  async pageHangs(): Promise<void> {
    await this.#ask('unresponsive');
  }

  /** Ends the shell as a crash or a power cut does. */
  async kill(): Promise<void> {
    this.#child.kill('SIGKILL');
    await this.ended;
  }

  async #endedEarly(): Promise<never> {
    throw new Error(`The shell ended with ${await this.ended} before it showed a page.`);
  }

  #ask(ask: string, about?: unknown): Promise<unknown> {
    this.#lastId += 1;
    const id = this.#lastId;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, ({ error, about }) => (error === undefined ? resolve(about) : reject(new Error(error))));
      this.#child.send({ id, ask, about }, (problem) => problem && reject(problem));
    });
  }

  #hear(message: FromShell): void {
    const { what, about, id } = message;
    if (what === 'answer' && id !== undefined) {
      this.#waiting.get(id)?.(message);
      this.#waiting.delete(id);
    } else if (what === 'to page') void this.#sendToPage(about as ToPage);
    else if (what === 'print') void this.#print(about as PrintJob);
    else if (what === 'load') void this.#load(String(about));
    else if (what === 'offered') this.offered.push(String(about));
    else if (what === 'asked') this.asked.push(String(about));
    else if (what === 'window') this.#window = about as Record<string, unknown>;
    else this.did.push(what);
  }

  async #sendToPage({ channel, payload }: ToPage): Promise<void> {
    await this.page.evaluate(([name, detail]) => dispatchEvent(new CustomEvent(name, { detail })), [
      TO_PAGE + channel,
      payload,
    ] as const);
  }

  /** Prints what a window that is not shown has loaded, as Electron does: by Chromium's own printing. */
  async #print({ job, url, options, preferences }: PrintJob): Promise<void> {
    try {
      await this.#ask('printed', { job, pdf: await printedPdf(this.page, url, options, preferences) });
    } catch (error) {
      await this.#ask('printed', { job, error: error instanceof Error ? error.message : String(error) });
    }
  }

  async #load(address: string): Promise<void> {
    await this.#takenOver;
    for (const permission of PERMISSIONS) {
      if (await this.#ask('permission', { permission })) await this.page.context().grantPermissions([permission]);
    }
    this.#isLoading = true;
    await this.page.goto(asShown(address));
    this.#isLoading = false;
    await this.#ask('has loaded');
    this.#hasLoaded();
  }

  async #takeOver(page: Page, preload: string): Promise<void> {
    const isNew = !shellOf.has(page);
    shellOf.set(page, this);
    this.page = page;
    if (!isNew) return;
    const current = () => shellOf.get(page) ?? this;
    await page.exposeBinding(CHANNEL_BINDING, ({ frame }, message: { channel: string; payload: unknown[] }) =>
      current().#passOn(frame, message),
    );
    await page.addInitScript(preloadScript(preload, SHOWN_ORIGIN));
    await page.context().route('**/*', (route) => current().#answerOrRefuse(route));
    const session = await page.context().newCDPSession(page);
    await session.send('Page.enable');
    session.on('Page.windowOpen', ({ url }) => current().#askForWindow(asShell(url)));
    page.on('popup', (made) => void current().#closeIfDenied(made));
  }

  async #passOn(frame: Frame, { channel, payload }: { channel: string; payload: unknown[] }) {
    try {
      const isMainFrame = frame === this.page.mainFrame();
      const value = await this.#ask('message', { channel, payload, url: asShell(frame.url()), isMainFrame });
      this.answered.push(channel);
      return { value };
    } catch (error) {
      return { error: error instanceof Error ? error.message : String(error) };
    }
  }

  async #answerOrRefuse(route: Route): Promise<void> {
    // A shell that has ended serves nothing, and a page that has ended wants nothing.
    await this.#answerRoute(route).catch(() => route.abort('failed').catch(() => {}));
  }

  async #answerRoute(route: Route): Promise<void> {
    const request = route.request();
    const url = asShell(request.url());
    if (request.isNavigationRequest()) {
      const frame = frameOf(request);
      const isMainFrame = frame === this.page.mainFrame();
      const isLoad = this.#isLoading && isMainFrame;
      const isOfWindow = frame?.page() === this.page;
      if (!isOfWindow || (!isLoad && (await this.#ask('navigation', { url, isMainFrame })))) {
        this.refused.push(url);
        return route.abort('aborted');
      }
    }
    if (!url.startsWith(`${SHELL_ORIGIN}/`)) {
      this.refused.push(url);
      return route.abort('blockedbyclient');
    }
    const answer = (await this.#ask('page', { url, method: request.method() })) as {
      status: number;
      headers: Record<string, string>;
      body: Uint8Array;
    };
    await route.fulfill({ status: answer.status, headers: answer.headers, body: Buffer.from(answer.body) });
  }

  #askForWindow(url: string): void {
    const action = this.#ask('window wanted', { url }).then(String, String);
    this.#wantedWindows.set(url, action);
    void action.then((decided) => decided === 'deny' && this.refused.push(`window ${url}`));
  }

  /** Chromium has made the window by now, unlike Electron, so one that is denied is closed. */
  async #closeIfDenied(made: Page): Promise<void> {
    if ((await this.#wantedWindows.get(asShell(made.url()))) === 'deny') await made.close();
  }
}

async function printedPdf(
  page: Page,
  url: string,
  options: PrintJob['options'],
  { javascript = true }: PrintJob['preferences'],
): Promise<Uint8Array> {
  const browser = page.context().browser();
  if (!browser) throw new Error('There is no browser to print with.');
  const context = await browser.newContext({ javaScriptEnabled: javascript });
  try {
    const sheet = await context.newPage();
    await sheet.goto(url);
    const session = await context.newCDPSession(sheet);
    const { data } = await session.send('Page.printToPDF', options);
    return Buffer.from(data, 'base64');
  } finally {
    await context.close();
  }
}

/** @returns null while the frame is being made, which is so for a window that a page asks for */
function frameOf(request: Request): Frame | null {
  try {
    return request.frame();
  } catch {
    return null;
  }
}
