/** How soon the window has worked out what a page asks, from showing the page to the last of its answers, on all cores. */
import { test } from '../support/app';
import { projectFile } from '../support/project-file';
import { settled, showPage, workedOut } from '../support/screen';

test.describe.configure({ timeout: 150_000 });

const PAGES = [
  { name: 'Joints', what: 'where the gaps of one method come from, its aim and the accuracy it needs' },
  { name: 'Test cuts', what: 'what test cuts are worth' },
] as const;

for (const { name, what } of PAGES) {
  test(`the window answers ${what}`, async ({ blank: page, openApp }, info) => {
    await openApp(page, { file: projectFile(info, 'Bread bin', 4_000) });
    await settled(page);
    const start = performance.now();
    await showPage(page, name);
    await workedOut(page);
    process.stdout.write(`${what}: ${((performance.now() - start) / 1000).toFixed(1)} s\n`);
  });
}
