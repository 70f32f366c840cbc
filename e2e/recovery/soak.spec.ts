/**
 * Edits one after the other, each recomputed and waited for, hold the memory flat: the page's and the workers'. A normal
 * run makes 50 edits, to be quick; RINGTRUE_SOAK=2000 makes as many as it says.
 */
import type { CDPSession, Page } from '@playwright/test';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { settled, showPage } from '../support/screen';

const EDITS = Number(process.env.RINGTRUE_SOAK ?? 50);
/** What is made once, such as the code of a page and the first outcomes kept, is there by then. */
const WARM_UP = Math.min(200, EDITS / 2);
/** Every so many edits the other pages are looked at too. */
const ROUND = Math.max(25, EDITS / 20);

interface Held {
  heapMb: number;
  nodes: number;
  listeners: number;
  /** Of all simulation workers together. */
  workersMb: number;
}

/** Talks to the workers of the page through its own session. */
async function workerHeaps(session: CDPSession): Promise<() => Promise<number>> {
  const workers = new Set<string>();
  const answers = new Map<number, (result: { usedSize?: number; backingStorageSize?: number }) => void>();
  let lastId = 0;
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') workers.add(sessionId);
  });
  session.on('Target.detachedFromTarget', ({ sessionId }) => workers.delete(sessionId));
  session.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message);
    answers.get(id)?.(result ?? {});
  });
  await session.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  const ask = (sessionId: string, method: string) =>
    new Promise<{ usedSize?: number; backingStorageSize?: number }>((resolve) => {
      const id = ++lastId;
      answers.set(id, resolve);
      void session.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    });
  return async () => {
    let bytes = 0;
    for (const worker of workers) {
      await ask(worker, 'HeapProfiler.collectGarbage');
      const { usedSize, backingStorageSize = 0 } = await ask(worker, 'Runtime.getHeapUsage');
      bytes += (usedSize ?? Number.NaN) + backingStorageSize;
    }
    return bytes / 2 ** 20;
  };
}

async function held(session: CDPSession, workersMb: () => Promise<number>): Promise<Held> {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  return {
    heapMb: of('JSHeapUsedSize') / 2 ** 20,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
    workersMb: await workersMb(),
  };
}

/** One edit of another kind each time, as somebody would who looks for the right figures. */
async function edit(page: Page, number: number): Promise<void> {
  const limit = (name: string, mm: number) =>
    page.getByRole('textbox', { name: `Widest gap ${name}` }).fill(`${mm.toFixed(3)} mm`);
  if (number % 5 === 3) await page.getByRole('button', { name: 'Undo' }).click();
  else if (number % 5 === 4) await page.getByRole('button', { name: 'Redo' }).click();
  else if (number % 5 === 2) await limit('where it shows', 0.1 + 0.001 * (number % 97));
  else await limit('where it is hidden', 0.3 + 0.001 * (number % 389));
  await settled(page);
}

async function lookAround(page: Page, number: number): Promise<void> {
  await showPage(page, 'Piece');
  await page.getByRole('textbox', { name: 'Height' }).fill(`${120 + (number % 40)} mm`);
  for (const name of ['Methods', 'Joints', 'Test cuts', 'Explain', 'Verdict'] as const) await showPage(page, name);
  await settled(page);
}

test(`${EDITS} edits leave nothing behind in the memory`, async ({ blank: page, openApp }, info) => {
  test.setTimeout(120_000 + EDITS * 2500);
  await openApp(page, { file: projectFile(info, 'Edited often', 1000) });
  await settled(page);
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const workersMb = await workerHeaps(session);
  let before: Held | null = null;
  for (let number = 0; number < EDITS; number += 1) {
    if (number % ROUND === 0) await lookAround(page, number);
    if (number === WARM_UP) before = await held(session, workersMb);
    await edit(page, number);
  }
  const after = await held(session, workersMb);
  if (!before) throw new Error('Nothing was measured before.');
  const mb = ({ heapMb, workersMb: workers }: Held) => `${heapMb.toFixed(1)} MB, workers ${workers.toFixed(1)} MB`;
  process.stdout.write(`${EDITS} edits: after ${WARM_UP} ${mb(before)}; at the end ${mb(after)}\n`);
  // The undo history holds 200 projects of about 5 kB; outcomes kept for going back are 24 of about 0.2 MB.
  expect(after.heapMb - before.heapMb).toBeLessThan(8);
  expect(after.workersMb).toBeGreaterThan(0);
  expect(after.workersMb - before.workersMb).toBeLessThan(16);
  expect(after.nodes).toBeLessThan(before.nodes * 1.25 + 200);
  expect(after.listeners).toBeLessThan(before.listeners * 1.25 + 100);
});
