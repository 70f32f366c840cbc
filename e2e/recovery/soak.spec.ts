/**
 * Edits one after the other, each recomputed, hold the memory flat. A normal run makes 150 edits, to be quick;
 * RINGTRUE_SOAK=2000 makes as many as it says.
 */
import type { CDPSession, Page } from '@playwright/test';
import { expect, test } from '../support/app';

const EDITS = Number(process.env.RINGTRUE_SOAK ?? 150);
/** What is made once, such as the code of a page, is there by then. */
const WARM_UP = 50;

interface Held {
  heapMb: number;
  nodes: number;
  listeners: number;
}

async function held(session: CDPSession): Promise<Held> {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  return { heapMb: of('JSHeapUsedSize') / 2 ** 20, nodes: of('Nodes'), listeners: of('JSEventListeners') };
}

/** Puts other heights into the field, as somebody would who looks for the right one. */
async function edit(page: Page, times: number, from: number): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Height' });
  for (let done = 0; done < times; done += 1) {
    await field.fill(`${120 + ((from + done) % 40)} mm`);
    await field.press('Enter');
  }
}

test(`${EDITS} edits leave nothing behind in the memory`, async ({ page }) => {
  test.setTimeout(120_000 + EDITS * 500);
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Piece' }).click();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  await edit(page, WARM_UP, 0);
  const before = await held(session);
  await edit(page, EDITS - WARM_UP, WARM_UP);
  const after = await held(session);
  process.stdout.write(`${EDITS} edits: ${before.heapMb.toFixed(1)} MB, then ${after.heapMb.toFixed(1)} MB\n`);
  // The undo history holds 200 projects of about 5 kB; a result that is not let go has about 1 MB.
  expect(after.heapMb - before.heapMb).toBeLessThan(8);
  expect(after.nodes).toBeLessThan(before.nodes * 1.25 + 200);
  expect(after.listeners).toBeLessThan(before.listeners * 1.25 + 100);
});
