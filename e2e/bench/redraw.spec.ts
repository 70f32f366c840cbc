/**
 * How soon the screen follows the hand with five methods compared, as seen in the page: from the event to the frame after
 * the figures changed. `npm run bench` runs it, and prints the figures; how fast the machine is decides no test.
 */
import type { Page } from '@playwright/test';
import { test } from '../support/app';
import { projectFile } from '../support/project-file';
import { limitHandle, settled, showPage } from '../support/screen';

test.describe.configure({ timeout: 150_000 });

const MOVES = 15;

declare global {
  interface Window {
    /** Milliseconds from the next move to the frame after what is watched first shows something else. */
    redrawn: Promise<number>;
  }
}

/** @param isSimulated the figures of before are softened until those that fit are there, and only then count as redrawn */
async function watch(page: Page, selector: string, isSimulated: boolean): Promise<void> {
  await page.evaluate(
    ({ watched, waitsForFresh }) => {
      const shown = (): string => document.querySelector(watched)?.outerHTML ?? '';
      const isFresh = (): boolean => !document.querySelector(watched)?.querySelector('.softened');
      const heard = new AbortController();
      window.redrawn = new Promise((resolve) => {
        const listen = (event: Event): void => {
          heard.abort();
          const before = shown();
          const observer = new MutationObserver(() => {
            if (shown() === before || (waitsForFresh && !isFresh())) return;
            observer.disconnect();
            requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - event.timeStamp)));
          });
          observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
        };
        // A slider is moved by a key; a field tells of what is typed.
        for (const kind of ['keydown', 'input']) {
          document.addEventListener(kind, listen, { capture: true, signal: heard.signal });
        }
      });
    },
    { watched: selector, waitsForFresh: isSimulated },
  );
}

async function measured(
  page: Page,
  selector: string,
  isSimulated: boolean,
  move: (time: number) => Promise<void>,
): Promise<number[]> {
  const times: number[] = [];
  for (let time = 0; time < MOVES; time += 1) {
    await watch(page, selector, isSimulated);
    await move(time);
    times.push(await page.evaluate(() => window.redrawn));
    await page.waitForTimeout(400);
  }
  return times.toSorted((a, b) => a - b);
}

function say(what: string, times: readonly number[]): void {
  const at = (share: number): string => (times[Math.floor(share * (times.length - 1))] ?? Number.NaN).toFixed(0);
  process.stdout.write(`first redraw after ${what}: ${at(0.5)} ms, the slowest ${at(1)} ms (wanted: 100)\n`);
}

test('the first redraw follows a move of the limit, of the slope and of a figure that needs new rings', async ({
  blank: page,
  openApp,
}, info) => {
  const five = projectFile(info, 'Five ways', 20_000, (project) => {
    const [first] = project.methods;
    return first ? { ...project, methods: [...project.methods, { ...first, name: 'Marked line again' }] } : project;
  });
  await openApp(page, { file: five });
  await settled(page);

  await limitHandle(page).focus();
  const limit = await measured(page, 'table.figures', false, () => page.keyboard.press('ArrowRight'));
  say('a move of the limit', limit);

  await showPage(page, 'Piece');
  await page.getByRole('slider', { name: 'Slope from upright' }).focus();
  const slope = await measured(page, '.page-answer', false, (time) =>
    page.keyboard.press(time % 2 === 0 ? 'ArrowRight' : 'ArrowLeft'),
  );
  say('a move of the slope', slope);

  await showPage(page, 'Verdict');
  await settled(page);
  const field = page.getByRole('textbox', { name: 'Widest gap where it is hidden' });
  const rings = await measured(page, 'table.figures', true, (time) =>
    field.fill(`${(0.5 + 0.01 * time).toFixed(2)} mm`),
  );
  say('a figure that needs new rings of all five methods', rings);
});
