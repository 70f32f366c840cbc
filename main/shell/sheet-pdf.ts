import { BrowserWindow } from 'electron';
import { PDF_OPTIONS } from '../print/pdf-options';

/** Prints a sheet in a window that is never shown, where no script runs. */
export async function sheetPdf(html: string): Promise<Uint8Array> {
  const sheetWindow = new BrowserWindow({
    show: false,
    webPreferences: { javascript: false, sandbox: true, contextIsolation: true, nodeIntegration: false },
  });
  try {
    await sheetWindow.loadURL(`data:text/html;charset=utf-8;base64,${Buffer.from(html).toString('base64')}`);
    return await sheetWindow.webContents.printToPDF(PDF_OPTIONS);
  } finally {
    sheetWindow.destroy();
  }
}
