import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { report } from '../../../main/command/report';
import { ensureChromium } from '../../../main/ready.mjs';
import { aheadChance } from '../../../sim/decide/chance-ahead';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { chanceSentence, expectSentences, explainedResult } from '../../../sim/wording/explain';
import { recommendation } from '../../../sim/wording/verdict';
import { readPdf, unspaced } from '../../support/read-pdf';
import { scratchFolder } from '../../support/scratch-folder';
import { shippedPrograms } from '../../support/shipped-programs';
import { captured, fileOf } from './captured';

let programs: URL;

beforeAll(async () => {
  programs = await shippedPrograms();
}, 300_000);

const FEW = 500;

/** The example with half the staves, closed by touch: what a sheet holds does not hang on how many rings are computed how well. */
function quickProject(): Project {
  const project = exampleProject();
  return { ...project, piece: { ...project.piece, sides: 6 }, run: { ...project.run, trials: FEW, rule: 'touch' } };
}

async function reported(...args: string[]): Promise<string> {
  const out: string[] = [];
  const sink = { write: (text: string) => out.push(text) };
  const file = fileOf(quickProject());
  await report([file, '--workers', '1', ...args], { stdout: sink, stderr: { write: () => {} } }, programs);
  return out.join('');
}

describe('ringtrue report', () => {
  it('gives the client’s sheet of the best method on standard output, or of the one named', async () => {
    const project = quickProject();
    const results = project.methods.map((_, index) => finish(runMethod(project, index)));
    const best = explainedResult(project, results);
    const [marked, tested] = [results[0], best].map((result) => result && chanceSentence(project, result));
    expect(unspaced(await reported())).toContain(unspaced(tested ?? 'none'));
    expect(unspaced(await reported('--method', 'Marked line'))).toContain(unspaced(marked ?? 'none'));
  }, 120_000);

  it('writes the file named, and keeps one that is there already unless forced', async () => {
    const path = join(scratchFolder(), 'sheet.html');
    expect(await reported('--out', path, '--paper', 'letter')).toBe(`Wrote ${path}.\n`);
    expect(readFileSync(path, 'utf8')).toContain('data-paper="letter"');
    writeFileSync(path, 'mine');
    await expect(reported('--out', path)).rejects.toThrow('is there already and is kept');
    expect(readFileSync(path, 'utf8')).toBe('mine');
    await reported('--out', path, '--force');
    expect(readFileSync(path, 'utf8')).toMatch(/^<!doctype html>/);
  }, 120_000);
});

describe('ringtrue report prints', () => {
  const PAPERS_MM = { a4: [210, 297], letter: [215.9, 279.4] } as const;
  const project = quickProject();
  let results: MethodResult[];

  beforeAll(async () => {
    // Says what is missing, and fails, where no browser can be had.
    process.env.RINGTRUE_CHROMIUM ??= await ensureChromium();
    results = project.methods.map((_, index) => finish(runMethod(project, index)));
  }, 120_000);

  /** What the words on paper must hold: which method to use, and how good it is. */
  function recommended(kind: 'client' | 'maker'): string[] {
    const best = explainedResult(project, results);
    if (best === undefined) throw new Error('nothing was simulated');
    if (kind === 'client') return expectSentences(project, best, results);
    const pairs = results.flatMap((a, i) =>
      results.slice(i + 1).map((b) => {
        return { first: a.prediction.name, second: b.prediction.name, firstAhead: aheadChance(a.sample, b.sample) };
      }),
    );
    const { headline, because } = recommendation(project, results, pairs);
    return [headline, ...because, `Maker’s report on “${best.prediction.name}”`];
  }

  it.each([
    ['client', 'a4'],
    ['client', 'letter'],
    ['maker', 'a4'],
    ['maker', 'letter'],
  ] as const)(
    'the %s’s sheet on %s: a PDF with what is recommended, titled, on the paper asked for',
    async (kind, paper) => {
      const path = join(scratchFolder(), 'sheet.pdf');
      expect(await reported('--for', kind, '--paper', paper, '--out', path)).toBe(`Wrote ${path}.\n`);
      const pdf = await readPdf(readFileSync(path));
      expect(pdf.title).toBe(kind === 'client' ? project.title : `${project.title}, maker’s report`);
      if (kind === 'client') expect(pdf.pages).toHaveLength(1);
      else expect(pdf.pages.length).toBeGreaterThan(3);
      for (const { widthPt, heightPt } of pdf.pages) {
        // Sizes of paper: ISO 216 and ANSI Y14.1; the browser rounds to whole points.
        const [widthMm, heightMm] = [widthPt, heightPt].map((points) => (points * 25.4) / 72);
        expect(Math.abs((widthMm ?? 0) - PAPERS_MM[paper][0])).toBeLessThan(0.4);
        expect(Math.abs((heightMm ?? 0) - PAPERS_MM[paper][1])).toBeLessThan(0.4);
      }
      const read = unspaced(pdf.pages.map(({ text }) => text).join(' '));
      for (const words of recommended(kind)) expect(read).toContain(unspaced(words));
    },
    240_000,
  );
});

describe('ringtrue report refuses, and does nothing', () => {
  it.each([
    [['--out', 'sheet.docx'], 'Option --out is "sheet.docx". Give a name that ends in .pdf or .html.'],
    [['--for', 'dealer'], 'Option --for is "dealer". Give one of client, maker.'],
    [['--paper', 'a3'], 'Option --paper is "a3". Give one of a4, letter.'],
    [['--method', 'Other'], 'Option --method is "Other", which the file does not have.'],
  ])('%j', async (args, sentence) => {
    const { code, stdout, stderr } = await captured(['report', fileOf(exampleProject()), ...args]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(sentence);
  });

  it.each(['sheet.pdf', 'sheet.html'])('where %s is there already and is not to be written over', async (name) => {
    const path = join(scratchFolder(), name);
    writeFileSync(path, 'mine');
    const { code, stdout, stderr } = await captured(['report', fileOf(exampleProject()), '--out', path]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toBe(`${path} is there already and is kept. Give another name, or --force to write over it.\n`);
    expect(readFileSync(path, 'utf8')).toBe('mine');
  });

  it('a PDF where no browser can print it, before anything is simulated', async () => {
    vi.stubEnv('RINGTRUE_CHROMIUM', join(scratchFolder(), 'no-browser'));
    const path = join(scratchFolder(), 'sheet.pdf');
    const { code, stdout, stderr } = await captured(['report', fileOf(exampleProject()), '--out', path]);
    vi.unstubAllEnvs();
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toMatch(/no-browser, which is not a program\. Give the path of a Chromium-family browser\.\n$/);
    expect(existsSync(path)).toBe(false);
  });
});
