/**
 * Stands in for the module `electron` where its runtime is not: both ends of the channels are joined, messages are copied
 * as between processes, and whatever the shell sets or asks for is kept to be looked at.
 */

type Handler = (event: { senderFrame: Frame | null }, ...payload: unknown[]) => unknown;

interface Frame {
  url: string;
}

interface MenuItem {
  label?: string;
  role?: string;
  enabled?: boolean;
  accelerator?: string;
  registerAccelerator?: boolean;
  click?: () => void;
}

interface MenuHead {
  label?: string;
  submenu?: MenuItem[];
}

/** What the shell set up, and what the person answers. */
export const seen = {
  /** What answers on a channel that somebody waits at, and what hears those where nobody does. */
  answering: new Map<string, Handler>(),
  hearing: new Map<string, Handler>(),
  exposed: new Map<string, unknown>(),
  windows: [] as BrowserWindow[],
  contentsListeners: [] as ((event: unknown, contents: WebContents) => void)[],
  permissionRequest: null as ((contents: unknown, permission: string, decide: (may: boolean) => void) => void) | null,
  permissionCheck: null as (() => boolean) | null,
  pages: null as ((request: Request) => Response) | null,
  /** The frame that messages come from; null for one that is gone meanwhile, undefined for the window's own. */
  stranger: undefined as Frame | null | undefined,
  /** Where the files lie that the person dropped. */
  dropped: new Map<File, string>(),
  openAnswer: { canceled: true, filePaths: [] as string[] },
  saveAnswer: { canceled: true, filePath: '' },
  messageBoxAnswer: 0,
  menu: [] as MenuHead[],
};

class Emitter {
  readonly listeners = new Map<string, (...payload: never[]) => void>();
  on(name: string, listener: (...payload: never[]) => void): void {
    this.listeners.set(name, listener);
  }
  once(name: string, listener: (...payload: never[]) => void): void {
    this.on(name, listener);
  }
  /** @returns whether the listener prevented what would happen */
  emit(name: string, event: Record<string, unknown> = {}, ...payload: unknown[]): boolean {
    let prevented = false;
    const preventDefault = () => {
      prevented = true;
    };
    const listener = this.listeners.get(name) as ((...all: unknown[]) => void) | undefined;
    listener?.({ ...event, preventDefault }, ...payload);
    return prevented;
  }
}

export class WebContents extends Emitter {
  mainFrame: Frame = { url: 'app://ringtrue/' };
  /** What the printing was asked for. */
  printed: unknown = null;
  async printToPDF(options: unknown): Promise<Buffer> {
    this.printed = options;
    return Buffer.from('%PDF-double');
  }
  send(channel: string, ...payload: unknown[]): void {
    for (const listener of pageListeners.get(channel) ?? []) listener({}, ...structuredClone(payload));
  }
  crashed = false;
  forcefullyCrashRenderer(): void {
    this.crashed = true;
  }
  openHandler: ((details: { url: string }) => { action: string }) | null = null;
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
}

export class BrowserWindow extends Emitter {
  readonly webContents = new WebContents();
  address = '';
  constructor(readonly options: { webPreferences: Record<string, unknown>; x?: number; width?: number }) {
    super();
    seen.windows.push(this);
    for (const listener of seen.contentsListeners) listener({}, this.webContents);
  }
  async loadURL(address: string): Promise<void> {
    this.address = address;
  }
  setDocumentEdited(): void {}
  progress: number[] = [];
  setProgressBar(share: number): void {
    this.progress.push(share);
  }
  bounds = { x: 40, y: 30, width: 900, height: 700 };
  maximized = false;
  getNormalBounds() {
    return this.bounds;
  }
  isMaximized(): boolean {
    return this.maximized;
  }
  maximize(): void {
    this.maximized = true;
  }
  show(): void {}
  focus(): void {}
  isMinimized(): boolean {
    return false;
  }
  destroyed = false;
  destroy(): void {
    this.destroyed = true;
  }
}

type PageListener = (event: unknown, ...payload: never[]) => void;

/** What the preload script listens to. */
const pageListeners = new Map<string, ((event: unknown, ...payload: unknown[]) => void)[]>();

export const Menu = {
  buildFromTemplate: (template: MenuHead[]) => template,
  setApplicationMenu(menu: MenuHead[]): void {
    seen.menu = menu;
  },
};

function sender(): { senderFrame: Frame | null } {
  const shown = seen.windows.findLast(({ destroyed }) => !destroyed);
  return { senderFrame: seen.stranger === undefined ? (shown?.webContents.mainFrame ?? null) : seen.stranger };
}

export const ipcMain = {
  handle: (channel: string, handler: Handler) => seen.answering.set(channel, handler),
  on: (channel: string, handler: Handler) => seen.hearing.set(channel, handler),
};

export const ipcRenderer = {
  on(channel: string, listener: PageListener): void {
    const listening = pageListeners.get(channel) ?? [];
    pageListeners.set(channel, [...listening, listener as (event: unknown, ...payload: unknown[]) => void]);
  },
  removeAllListeners(channel: string): void {
    pageListeners.delete(channel);
  },
  async invoke(channel: string, ...payload: unknown[]): Promise<unknown> {
    const answer = seen.answering.get(channel);
    if (!answer) throw new Error(`Nobody answers on ${channel}.`);
    return structuredClone(await answer(sender(), ...structuredClone(payload)));
  },
  send(channel: string, ...payload: unknown[]): void {
    seen.hearing.get(channel)?.(sender(), ...structuredClone(payload));
  },
};

export const webUtils = {
  getPathForFile(file: unknown): string {
    if (!(file instanceof File)) throw new TypeError('This is no File.');
    return seen.dropped.get(file) ?? '';
  },
};

export const contextBridge = {
  exposeInMainWorld: (name: string, value: unknown) => seen.exposed.set(name, Object.freeze(value)),
};

export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }],
};

export const dialog = {
  showOpenDialog: async () => seen.openAnswer,
  showSaveDialog: async () => seen.saveAnswer,
  showMessageBoxSync: () => seen.messageBoxAnswer,
  showErrorBox(title: string, content: string): void {
    app.did.push(`${title}: ${content}`);
  },
};

class App extends Emitter {
  /** Another program of this kind runs already when false. */
  isFirst = true;
  about: Record<string, string> = {};
  /** What it did of itself, in order. */
  readonly did: string[] = [];
  /** Settles when the test says so. */
  becomeReady = (): void => {};
  userData = '';
  override on(name: string, listener: (...payload: never[]) => void): void {
    if (name === 'web-contents-created') seen.contentsListeners.push(listener as (typeof seen.contentsListeners)[0]);
    else super.on(name, listener);
  }
  enableSandbox(): void {}
  requestSingleInstanceLock(): boolean {
    return this.isFirst;
  }
  whenReady(): Promise<void> {
    this.did.push('waits to be ready');
    return new Promise((resolve) => {
      this.becomeReady = resolve;
    });
  }
  getPath(): string {
    return this.userData;
  }
  setAboutPanelOptions(options: Record<string, string>): void {
    this.about = options;
  }
  addRecentDocument(): void {}
  quit(): void {
    this.did.push('quits');
  }
  exit(code: number): void {
    this.did.push(`exits with ${code}`);
  }
}

export const app = new App();

export const session = {
  defaultSession: {
    setPermissionRequestHandler(handler: typeof seen.permissionRequest): void {
      seen.permissionRequest = handler;
    },
    setPermissionCheckHandler(handler: typeof seen.permissionCheck): void {
      seen.permissionCheck = handler;
    },
    setDevicePermissionHandler(): void {},
  },
};

export const protocol = {
  registerSchemesAsPrivileged(): void {},
  handle(_scheme: string, handler: (request: Request) => Response): void {
    seen.pages = handler;
  },
};
