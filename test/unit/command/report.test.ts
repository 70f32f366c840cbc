import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { report } from '../../../main/command/report';
import { exampleProject } from '../../../sim/project/example';
import { finish } from '../../../sim/run/block-loop';
import { runMethod } from '../../../sim/run/run-method';
import { chanceSentence } from '../../../sim/wording/explain';
import { type BuiltReportProgram, buildReportProgram } from '../../support/report-program';
import { scratchFolder } from '../../support/scratch-folder';
import { captured, fileOf } from './captured';

let built: BuiltReportProgram;

beforeAll(async () => {
  built = await buildReportProgram();
}, 120_000);

afterAll(() => built?.remove());

const bare = (text: string): string => text.replace(/[\s\u00a0]+/g, '');

async function reported(...args: string[]): Promise<string> {
  const out: string[] = [];
  const sink = { write: (text: string) => out.push(text) };
  const few = ['--trials', '500', '--workers', '1'];
  await report(
    [fileOf(exampleProject()), ...few, ...args],
    { stdout: sink, stderr: { write: () => {} } },
    built.beside,
  );
  return out.join('');
}

describe('ringtrue report', () => {
  it('gives the client’s sheet of the best method on standard output, or of the one named', async () => {
    const project = exampleProject();
    const run = { ...project.run, trials: 500 };
    const [marked, tested] = [0, 2].map((method) => chanceSentence(finish(runMethod({ ...project, run }, method))));
    expect(bare(await reported())).toContain(bare(tested ?? 'none'));
    expect(bare(await reported('--method', 'Marked line'))).toContain(bare(marked ?? 'none'));
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
