import type { Host } from '../../main/contract/host';
import { browserHost } from './browser-host';
import { electronHost } from './electron-host';

/** The host of this window: Electron's shell when it put its bridge there, else the local host behind a browser. */
export function chooseHost(): Host {
  return window.ringtrueHost ? electronHost(window.ringtrueHost) : browserHost();
}
