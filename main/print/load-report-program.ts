import type { ReportProgram } from '../contract/report';

const REPORT_FILE = './report.js';

/**
 * The program that draws the sheets. It is made of the pages' own parts, which the hosts do not import, so it is built
 * by itself and loaded where it is needed.
 *
 * @param beside a built program in the folder it lies in
 */
export async function loadReportProgram(beside: URL): Promise<ReportProgram> {
  return (await import(/* @vite-ignore */ new URL(REPORT_FILE, beside).href)) as ReportProgram;
}
