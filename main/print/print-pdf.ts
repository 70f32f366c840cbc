/** From the HTML of a sheet to a PDF, through an installed browser: real text, fonts inside, tagged, with an outline. */
import { findChromium, NotReady } from '../chromium.mjs';
import { type BrowserPipe, openBrowserPipe } from './browser-pipe';
import { PDF_OPTIONS } from './pdf-options';

/** A wish that cannot be granted on this machine, in a sentence. */
export class CannotPrint extends Error {}

const NO_BROWSER =
  'A PDF is printed by a Chromium-family browser, and none was found. Install one, set RINGTRUE_CHROMIUM to its path, or print the HTML from any browser.';

/** A browser that has not printed after so long never will. */
const PATIENCE_MS = 120_000;

/**
 * @param html a whole document; its scripts do not run and nothing is loaded for it
 * @returns the bytes of the PDF, its pages as large as the document's own @page rules say
 * @throws {CannotPrint} when there is no browser, or it fails
 */
export async function printPdf(html: string): Promise<Buffer> {
  const program = printingBrowser();
  const browser = openBrowserPipe(program);
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`it gave no answer for ${PATIENCE_MS / 1000} s`)), PATIENCE_MS);
  });
  try {
    return await Promise.race([print(browser, html), tooLong]);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new CannotPrint(
      `${program} could not print the sheet (${why}). Try again, or print the HTML from any browser.`,
    );
  } finally {
    clearTimeout(timer);
    await browser.close();
  }
}

/**
 * @returns the path of the browser that prints
 * @throws {CannotPrint} when there is none
 */
export function printingBrowser(): string {
  let program: string | null;
  try {
    program = findChromium();
  } catch (error) {
    if (error instanceof NotReady) throw new CannotPrint(error.message);
    throw error;
  }
  if (program === null) throw new CannotPrint(NO_BROWSER);
  return program;
}

async function print(browser: BrowserPipe, html: string): Promise<Buffer> {
  const { targetId } = await browser.ask('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await browser.ask('Target.attachToTarget', { targetId, flatten: true });
  const page = (method: string, params?: object) => browser.ask(method, params, String(sessionId));
  await page('Emulation.setScriptExecutionDisabled', { value: true });
  await page('Network.enable');
  await page('Network.emulateNetworkConditions', {
    offline: true,
    latency: 0,
    downloadThroughput: 0,
    uploadThroughput: 0,
  });
  const { frameTree } = await page('Page.getFrameTree');
  const { frame } = frameTree as { frame: { id: string } };
  await page('Page.setDocumentContent', { frameId: frame.id, html });
  const { data } = await page('Page.printToPDF', PDF_OPTIONS);
  return Buffer.from(String(data), 'base64');
}
