// @ts-check
/**
 * Stands in for the module `electron` in the process of the built shell. Windows, the pages' messages and what the person
 * answers are on the other side of the process channel, where the test drives Chromium; see running-shell.ts.
 */
import { EventEmitter } from 'node:events';
import { basename } from 'node:path';

/** @typedef {{ url: string }} Frame */

// As in a packaged program: the arguments follow the program itself, without the script that Node was given.
process.argv.splice(1, 1);

/** The other side may be gone already when the program ends. @param {object} message */
function send(message) {
  if (process.connected) process.send?.(message, undefined, undefined, () => {});
}

/**
 * Says something to the test's side; where there is none the program just runs.
 *
 * @param {string} what
 * @param {unknown} [about]
 */
function tell(what, about) {
  send({ what, about });
}

/** What the test wants answered, in order. @type {Record<string, unknown[]>} */
const answers = { open: [], save: [], messageBox: [] };

/** Emits an event that a listener can prevent. @param {EventEmitter} emitter @param {string} name @param {object} event @param {unknown[]} more */
function isPrevented(emitter, name, event, ...more) {
  let prevented = false;
  const preventDefault = () => {
    prevented = true;
  };
  emitter.emit(name, { ...event, preventDefault }, ...more);
  return prevented;
}

class WebContents extends EventEmitter {
  /** @type {Frame} */
  mainFrame = { url: '' };
  /** @param {object} [preferences] of the window */
  constructor(preferences = {}) {
    super();
    this.preferences = preferences;
  }
  /** @type {(details: { url: string }) => { action: string }} */
  openHandler = () => ({ action: 'allow' });
  /** @param {(details: { url: string }) => { action: string }} handler */
  setWindowOpenHandler(handler) {
    this.openHandler = handler;
  }
  /** @param {string} channel @param {unknown[]} payload */
  send(channel, ...payload) {
    tell('to page', { channel, payload });
  }
  reload() {
    tell('load', this.mainFrame.url);
  }
  forcefullyCrashRenderer() {
    this.emit('render-process-gone', {}, { reason: 'killed' });
  }
  /** @param {object} options @returns {Promise<Uint8Array>} */
  printToPDF(options) {
    return new Promise((resolve, reject) => {
      printing.set(printing.size, { resolve, reject });
      tell('print', { job: printing.size - 1, url: this.mainFrame.url, options, preferences: this.preferences });
    });
  }
}

/** What the other side is printing, by number. @type {Map<number, { resolve: (pdf: Uint8Array) => void, reject: (error: Error) => void }>} */
const printing = new Map();

/** @type {BrowserWindow | null} */
let theWindow = null;

export class BrowserWindow extends EventEmitter {
  /** @param {{ show?: boolean, webPreferences?: object }} options */
  constructor(options) {
    super();
    this.webContents = new WebContents(options.webPreferences);
    // Besides the one window there are only those that are never shown, to print from.
    this.isHidden = theWindow !== null;
    if (this.isHidden && options.show !== false) throw new Error('The stand-in shows one window.');
    if (!this.isHidden) {
      theWindow = this;
      tell('window', options);
    }
    app.emit('web-contents-created', {}, this.webContents);
  }
  /** @param {string} url */
  async loadURL(url) {
    this.webContents.mainFrame.url = url;
    if (!this.isHidden) tell('load', url);
  }
  show() {
    tell('shown');
  }
  /** @param {boolean} edited */
  setDocumentEdited(edited) {
    tell('edited', edited);
  }
  /** @param {number} share */
  setProgressBar(share) {
    tell('progress', share);
  }
  getNormalBounds() {
    return { x: 20, y: 20, width: 1280, height: 800 };
  }
  isMaximized() {
    return false;
  }
  maximize() {}
  isMinimized() {
    return false;
  }
  restore() {}
  focus() {
    tell('focused');
  }
  destroy() {
    if (this.isHidden) return;
    tell('closed');
    this.emit('closed');
    app.emit('window-all-closed');
  }
}

class App extends EventEmitter {
  enableSandbox() {
    tell('sandbox');
  }
  requestSingleInstanceLock() {
    return true;
  }
  async whenReady() {}
  setAboutPanelOptions() {}
  /** @param {string} path */
  addRecentDocument(path) {
    tell(`recent document ${path}`);
  }
  /** @param {string} name */
  getPath(name) {
    const folder = process.env.RINGTRUE_STATE;
    if (name !== 'userData' || !folder) throw new Error(`The stand-in knows no folder "${name}".`);
    return folder;
  }
  quit() {
    process.exitCode = 0;
    // Whatever is being answered goes out first.
    setImmediate(() => process.connected && process.disconnect?.());
  }
  /** @param {number} code */
  exit(code) {
    process.exit(code);
  }
}

export const app = new App();

/** @typedef {{ label?: string, enabled?: boolean, click?: () => void }} MenuItem */
/** @type {{ label?: string, submenu?: MenuItem[] }[]} */
let menu = [];

export const Menu = {
  /** @param {typeof menu} template */
  buildFromTemplate: (template) => template,
  /** @param {typeof menu} built */
  setApplicationMenu: (built) => {
    menu = built;
  },
};

export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }],
};

export const dialog = {
  async showOpenDialog() {
    const path = answers.open?.shift();
    return path ? { canceled: false, filePaths: [path] } : { canceled: true, filePaths: [] };
  },
  /** @param {unknown} _window @param {{ defaultPath?: string }} options */
  async showSaveDialog(_window, options) {
    tell('offered', basename(options.defaultPath ?? ''));
    const path = answers.save?.shift();
    return path ? { canceled: false, filePath: path } : { canceled: true, filePath: '' };
  },
  /** @param {unknown} _window @param {{ message: string, detail?: string, cancelId?: number }} options */
  showMessageBoxSync(_window, options) {
    tell('asked', `${options.message} ${options.detail ?? ''}`.trim());
    return answers.messageBox?.shift() ?? options.cancelId ?? 0;
  },
  /** @param {string} title @param {string} content */
  showErrorBox(title, content) {
    process.stderr.write(`${title}: ${content}\n`);
  },
};

/** Electron grants whatever no handler refuses. @type {(contents: unknown, permission: string, decide: (may: boolean) => void) => void} */
let permissionRequest = (_contents, _permission, decide) => decide(true);
let permissionCheck = () => true;

export const session = {
  defaultSession: {
    /** @param {typeof permissionRequest} handler */
    setPermissionRequestHandler(handler) {
      permissionRequest = handler;
    },
    /** @param {typeof permissionCheck} handler */
    setPermissionCheckHandler(handler) {
      permissionCheck = handler;
    },
    setDevicePermissionHandler() {},
  },
};

/** @type {((request: Request) => Response | Promise<Response>) | null} */
let pages = null;

export const protocol = {
  registerSchemesAsPrivileged() {},
  /** @param {string} scheme @param {(request: Request) => Response | Promise<Response>} handler */
  handle(scheme, handler) {
    if (scheme === 'app') pages = handler;
  },
};

/** @type {Map<string, (event: { senderFrame: Frame }, ...payload: unknown[]) => unknown>} */
const handlers = new Map();

export const ipcMain = {
  handle: handlers.set.bind(handlers),
  on: handlers.set.bind(handlers),
};

/** What the test's side may ask. @type {Record<string, (about: any) => unknown>} */
const asked = {
  answer({ dialog: name, value }) {
    answers[name]?.push(value);
  },
  async page({ url, method }) {
    const response = await pages?.(new Request(url, { method }));
    if (!response) throw new Error('The shell serves no pages.');
    return {
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: new Uint8Array(await response.arrayBuffer()),
    };
  },
  message({ channel, payload, url, isMainFrame }) {
    const contents = theWindow?.webContents;
    if (!contents) throw new Error('There is no window.');
    if (isMainFrame) contents.mainFrame.url = url;
    const handler = handlers.get(channel);
    if (!handler) throw new Error(`Nobody answers on ${channel}.`);
    return handler({ senderFrame: isMainFrame ? contents.mainFrame : { url } }, ...payload);
  },
  navigation({ url, isMainFrame }) {
    const contents = theWindow?.webContents;
    if (!contents) return true;
    const frameRefused = isPrevented(contents, 'will-frame-navigate', { url, isMainFrame });
    return frameRefused || (isMainFrame && isPrevented(contents, 'will-navigate', { url }));
  },
  'window wanted': ({ url }) => theWindow?.webContents.openHandler({ url }).action,
  permission: ({ permission }) =>
    new Promise((resolve) => {
      permissionRequest({}, permission, (may) => resolve(may || permissionCheck()));
    }),
  /** Like Electron's own, a menu chooses nothing that is greyed out. */
  'menu chosen'({ head, label }) {
    const item = menu.find((each) => each.label === head)?.submenu?.find((each) => each.label === label);
    if (!item) return 'absent';
    if (item.enabled === false) return 'greyed out';
    item.click?.();
    return 'chosen';
  },
  'has loaded': () => theWindow?.emit('ready-to-show'),
  'second instance': ({ words, folder }) => app.emit('second-instance', {}, words, folder),
  unresponsive: () => theWindow?.emit('unresponsive'),
  close() {
    if (!theWindow) return;
    if (!isPrevented(theWindow, 'close', {})) theWindow.destroy();
  },
  printed({ job, pdf, error }) {
    if (error === undefined) printing.get(job)?.resolve(pdf);
    else printing.get(job)?.reject(new Error(error));
  },
  'page gone': () => theWindow?.webContents.emit('render-process-gone', {}, { reason: 'crashed' }),
};

process.on('message', async (/** @type {any} */ { id, ask, about }) => {
  try {
    const value = await asked[ask]?.(about);
    send({ what: 'answer', id, about: value });
  } catch (error) {
    send({ what: 'answer', id, error: error instanceof Error ? error.message : String(error) });
  }
});
