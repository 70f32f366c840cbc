/** One answer, one wording: on the page, for who listens, on the command line and on the maker's paper. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../main/ready.mjs';
import { expect, test } from '../support/app';
import { projectFile } from '../support/project-file';
import { figuresTable, settled } from '../support/screen';

const bare = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ').trim();

test('page, screen reader, command line and paper say the same sentences with the same digits', async ({
  blank: page,
  openApp,
}, info) => {
  const file = projectFile(info, 'Lantern', 5000);
  await openApp(page, { file });
  await settled(page);
  const headline = bare((await page.getByRole('heading', { level: 1 }).textContent()) ?? '');
  expect(headline).toMatch(/^Use “.+”: .+ in 1/);
  const status = page.getByRole('status').filter({ hasText: 'Use “' });
  await expect.poll(async () => bare((await status.textContent()) ?? '')).toBe(headline);
  const shares = (await figuresTable(page).locator('tbody td:nth-of-type(1)').allTextContents()).map(bare);
  expect(shares).toHaveLength(4);

  const run = (...words: string[]): string =>
    execFileSync(process.execPath, [join(ROOT, 'main', 'ringtrue.mjs'), ...words], { encoding: 'utf8' });
  const compared = bare(run('compare', file));
  expect(compared).toContain(headline);
  for (const share of shares) expect(compared).toContain(share);

  const paper = info.outputPath('maker.html');
  run('report', file, '--for', 'maker', '--out', paper);
  const printed = bare(readFileSync(paper, 'utf8').replace(/<[^>]+>/g, ' '));
  expect(printed).toContain(headline);
  for (const share of shares) expect(printed).toContain(share);
});
