/** `ringtrue report`: the client's sheet or the maker's report, as HTML or PDF. */
import type { Project } from '../../sim/project/document';
import { askPool } from '../../sim/questions/ask-pool';
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import { explainedResult } from '../../sim/wording/explain';
import type { MakerAnswers, SheetInput, SheetKind } from '../contract/report';
import { loadReportProgram } from '../print/load-report-program';
import { pageCount } from '../print/page-count';
import { printingBrowser, printPdf } from '../print/print-pdf';
import { oneOf, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { outFile, writeOut } from './out-file';
import { progressLine } from './progress';
import { runMethods } from './run-methods';
import { runWishes } from './run-options';
import type { CommandIo } from './streams';
import { threadPool } from './thread-pool';

const OPTIONS = {
  for: 'value',
  out: 'value',
  paper: 'value',
  force: 'flag',
  trials: 'value',
  seed: 'value',
  rule: 'value',
  method: 'value',
  workers: 'value',
} as const;

/** @param workerProgram the program that draws the sheets lies beside it */
export async function report(args: readonly string[], io: CommandIo, workerProgram: URL): Promise<void> {
  const given = readArguments('report', args, OPTIONS, 1);
  const wishes = runWishes(given);
  const kind = oneOf(given, 'for', ['client', 'maker']) ?? 'client';
  const paper = oneOf(given, 'paper', ['a4', 'letter']) ?? 'a4';
  const out = outFile(given, 'out', ['pdf', 'html']);
  const isPdf = out?.ending === 'pdf';
  if (isPdf) printingBrowser();
  const read = wishes.override(await openProject('report', given.operands, io));
  const [asked] = wishes.methodsOf(read);
  const method = given.values.has('method') ? read.methods[asked ?? 0]?.name : undefined;
  const project: Project = method === undefined ? read : { ...read, explain: { ...read.explain, method } };

  const methods = project.methods.map((_, index) => index);
  const workers = wishes.workersFor(project, methods.length);
  const progress = progressLine(io.stderr, methods.length);
  const results: MethodResult[] = [];
  const onProgress = (run: RunProgress) => progress.show(run.method, run.ringsDone / run.ringsWanted);
  for await (const result of runMethods(project, methods, { budget: false, workers, workerProgram, onProgress })) {
    results.push(result);
  }
  progress.clear();
  const result = explainedResult(project, results);
  if (result === undefined) throw new Error('No method was simulated.');
  const input: SheetInput = { project, results, result, paper };
  const answers: MakerAnswers = await askAnswers(input, kind, wishes.workers, workerProgram);
  const program = await loadReportProgram(workerProgram);
  const html = program.renderReport(input, kind, answers);
  if (out === null) {
    io.stdout.write(html);
    return;
  }
  const printed = isPdf ? await printPdf(html) : html;
  await writeOut(out, printed);
  io.stdout.write(`Wrote ${fitForTerminal(out.path)}.\n`);
  const pages = typeof printed === 'string' ? 1 : pageCount(printed);
  if (kind === 'client' && pages > 1) {
    io.stderr.write(`It takes ${pages} pages. Shorten the closing words, or leave out parts by explain.show.\n`);
  }
}

async function askAnswers(
  { project, result }: SheetInput,
  kind: SheetKind,
  workers: number,
  workerProgram: URL,
): Promise<MakerAnswers> {
  const method = project.methods.findIndex(({ name }) => name === result.prediction.name);
  const pool = threadPool({ workers, workerProgram });
  try {
    const [budget, testValue] = await Promise.all([
      askPool(pool, project, method, { kind: 'budget' }).answer,
      kind === 'client' ? null : askPool(pool, project, method, { kind: 'testValue' }).answer,
    ]);
    return { budget, testValue };
  } finally {
    await pool.close();
  }
}
