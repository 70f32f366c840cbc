import { type BrowserWindow, type IpcMainEvent, type IpcMainInvokeEvent, ipcMain } from 'electron';
import { type AskedVerb, CHANNELS, type SpokenVerb, type ToldVerb } from '../contract/channels';
import type { Host } from '../contract/host';
import { PAYLOADS, type Payload } from '../contract/payloads';
import { isPagesAddress } from './pages-protocol';

/** What the shell answers to each verb whose answer the pages wait for. */
export type Answers = { readonly [Verb in AskedVerb]: (payload: Payload<Verb>) => ReturnType<Host[Verb]> };

/** What the shell does at each verb that nobody waits for an answer to. */
export type Orders = { readonly [Verb in ToldVerb]: (payload: Payload<Verb>) => void };

/**
 * Listens on every channel that pages speak on. This is the one place of the shell that does: what came from anywhere but
 * the pages in our window, or does not fit, gets to no answer and no order.
 */
export function listenToPages(browserWindow: BrowserWindow, answers: Answers, orders: Orders): void {
  /** @throws when another asks than our pages, or the payload does not fit */
  function admitted<Verb extends SpokenVerb>(
    verb: Verb,
    { senderFrame }: IpcMainInvokeEvent | IpcMainEvent,
    payload: unknown,
  ): Payload<Verb> {
    const isOurs =
      senderFrame !== null && senderFrame === browserWindow.webContents.mainFrame && isPagesAddress(senderFrame.url);
    if (!isOurs) throw new Error('Only the pages of this program may ask.');
    return PAYLOADS[verb].parse(payload) as Payload<Verb>;
  }

  function answer<Verb extends AskedVerb>(verb: Verb): void {
    // Awaited, so that a refusal too reaches the one who asked.
    ipcMain.handle(CHANNELS[verb], async (event, payload: unknown) => answers[verb](admitted(verb, event, payload)));
  }

  function obey<Verb extends ToldVerb>(verb: Verb): void {
    ipcMain.on(CHANNELS[verb], (event, payload: unknown) => orders[verb](admitted(verb, event, payload)));
  }

  for (const verb of Object.keys(answers) as AskedVerb[]) answer(verb);
  for (const verb of Object.keys(orders) as ToldVerb[]) obey(verb);
}
