import { readFileSync } from 'node:fs';

/** The name under which the page's side of the channels is handed to the script below, which takes it away at once. */
export const CHANNEL_BINDING = '__ringtrueChannels';

/** Begins the name of the event that stands for what the shell sends on a channel. */
export const TO_PAGE = 'to page ';

/** The event that says where the files lie that are dropped next; Chromium itself knows, but tells nobody. */
export const DROPPING = 'dropping files';

/**
 * The built preload script as a script that Chromium runs before the pages, in their main frame only. It gets stand-ins for
 * `contextBridge`, `ipcRenderer` and `webUtils`; unlike in Electron it shares the pages' world.
 *
 * @param file the built preload script
 * @param origin where the pages are
 */
export function preloadScript(file: string, origin: string): string {
  return `(() => {
    const ask = window.${CHANNEL_BINDING};
    delete window.${CHANNEL_BINDING};
    if (window !== window.top || location.origin !== ${JSON.stringify(origin)}) return;
    const invoke = async (channel, ...payload) => {
      const { error, value } = await ask({ channel, payload: structuredClone(payload) });
      if (error !== undefined) throw new Error("Error invoking remote method '" + channel + "': " + error);
      return value;
    };
    const paths = new Map();
    const identity = ({ name, size, lastModified }) => [name, size, lastModified].join(' ');
    let dropping = [];
    addEventListener(${JSON.stringify(DROPPING)}, ({ detail }) => { dropping = detail; });
    addEventListener('drop', ({ isTrusted, dataTransfer }) => {
      if (isTrusted) [...dataTransfer.files].forEach((file, index) => paths.set(identity(file), dropping[index]));
    }, true);
    const electron = {
      webUtils: {
        getPathForFile(file) {
          if (!(file instanceof File)) throw new TypeError('This is no File.');
          return paths.get(identity(file)) ?? '';
        },
      },
      contextBridge: {
        exposeInMainWorld: (name, value) => Object.defineProperty(window, name, { value: Object.freeze({ ...value }) }),
      },
      ipcRenderer: {
        invoke,
        send: (channel, ...payload) => void invoke(channel, ...payload).catch(() => {}),
        on: (channel, listener) => addEventListener(${JSON.stringify(TO_PAGE)} + channel, ({ detail }) => listener({}, ...detail)),
        removeAllListeners: () => {},
      },
    };
    const module = { exports: {} };
    const require = (name) => {
      if (name !== 'electron') throw new Error('A sandboxed preload script has no module ' + name + '.');
      return electron;
    };
    (function (require, module, exports) {
      ${readFileSync(file, 'utf8')}
    })(require, module, module.exports);
  })();`;
}
