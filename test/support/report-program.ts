import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import type { ReportProgram } from '../../main/contract/report';
import { loadReportProgram } from '../../main/print/load-report-program';
import { ROOT } from '../../main/ready.mjs';

export interface BuiltReportProgram {
  program: ReportProgram;
  /** Address of a program that would lie beside it. */
  beside: URL;
  remove(): void;
}

/** The program that draws the sheets, built as for shipping into a folder of its own. */
export async function buildReportProgram(): Promise<BuiltReportProgram> {
  const folder = mkdtempSync(join(tmpdir(), 'ringtrue-report-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: ROOT,
    publicDir: false,
    ssr: { noExternal: true },
    // Under a test runner the builder would take this for development.
    oxc: { jsx: { runtime: 'automatic', development: false } },
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: { report: join(ROOT, 'renderer/report/render-report.tsx') },
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  const beside = pathToFileURL(join(folder, 'task-worker.js'));
  return {
    program: await loadReportProgram(beside),
    beside,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
