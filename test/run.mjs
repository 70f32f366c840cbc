/**
 * `npm test`: everything that can be checked, on a bare clone. Every stage runs even when an earlier one failed; the
 * last line says how many checks passed and failed. A stage in which nothing ran, and a skipped test, count as failed:
 * neither shows that anything works.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium, ensureInstalled, orSayWhy, ROOT } from '../main/ready.mjs';

/** @typedef {{ passed: number, failed: number }} Count */

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}

/**
 * Runs one program with its output passed through.
 *
 * @param {string} tool its name in node_modules/.bin, or `node`
 * @param {string[]} toolArguments
 * @param {NodeJS.ProcessEnv} [environment]
 * @returns {Promise<boolean>} whether it ended well
 */
async function runs(tool, toolArguments, environment = {}) {
  const onWindows = process.platform === 'win32';
  const program =
    tool === 'node' ? process.execPath : join(ROOT, 'node_modules', '.bin', onWindows ? `${tool}.cmd` : tool);
  const child = spawn(program, toolArguments, {
    cwd: ROOT,
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: onWindows,
  });
  const [code] = await once(child, 'exit');
  return code === 0;
}

/**
 * @param {boolean} endedWell
 * @returns {Count}
 */
function one(endedWell) {
  return endedWell ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/**
 * @param {string} path a report
 * @returns {any} its contents; null when the runner did not come as far as writing it
 */
function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

/**
 * @param {boolean} endedWell the runner's own verdict
 * @param {Count} count what its report says
 * @returns {Count} with one failure more when the report does not explain a bad end, or nothing ran
 */
function settle(endedWell, { passed, failed }) {
  const unexplained = failed === 0 && (!endedWell || passed === 0);
  return { passed, failed: unexplained ? 1 : failed };
}

const reports = mkdtempSync(join(tmpdir(), 'ringtrue-test-'));

/** @returns {Promise<Count>} */
async function types() {
  let clean = true;
  for (const project of ['sim', 'main', 'renderer', 'test', 'e2e']) {
    if (!(await runs('tsc', ['-p', project]))) clean = false;
  }
  return one(clean);
}

/** @returns {Promise<Count>} */
async function lint() {
  return one(await runs('biome', ['ci', '--colors=off', '--error-on-warnings', '.']));
}

/** @returns {Promise<Count>} */
async function build() {
  return one(await runs('node', ['main/build.mjs']));
}

/** @returns {Promise<Count>} */
async function packaging() {
  return one(await runs('node', ['test/pack-check.mjs']));
}

/** @returns {Promise<Count>} */
async function unit() {
  const file = join(reports, 'unit.json');
  const endedWell = await runs('vitest', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`]);
  const report = readReport(file);
  if (!report) return { passed: 0, failed: 1 };
  const notRun = report.numPendingTests + report.numTodoTests;
  if (notRun > 0) say(`${notRun} tests did not run; they count as failed.`);
  return settle(endedWell, { passed: report.numPassedTests, failed: report.numFailedTests + notRun });
}

/**
 * @param {string[]} which switches that choose the journeys
 * @returns {Promise<Count>}
 */
async function journeys(which) {
  const file = join(reports, 'e2e.json');
  const all = ['test', '--reporter=list,json', ...which];
  rmSync(file, { force: true });
  const endedWell = await runs('playwright', all, { PLAYWRIGHT_JSON_OUTPUT_FILE: file });
  const report = readReport(file);
  if (!report) return { passed: 0, failed: 1 };
  const { expected, unexpected, flaky, skipped } = report.stats;
  if (skipped > 0) say(`${skipped} tests did not run; they count as failed.`);
  if (flaky > 0) say(`${flaky} journeys passed only at the second try; the list above names them.`);
  return settle(endedWell, { passed: expected + flaky, failed: unexpected + skipped });
}

const STAGES = {
  types,
  lint,
  build,
  packaging,
  unit,
  // What is printed of them tells something only where nothing else runs.
  'how soon the screen follows': () => journeys(['--grep=@alone', '--workers=1']),
  'end to end': () => journeys(['--grep-invert=@alone']),
};

await orSayWhy(async () => {
  await ensureInstalled();
  await ensureChromium();
  const total = { passed: 0, failed: 0 };
  const lines = [];
  for (const [name, stage] of Object.entries(STAGES)) {
    say(`\n== ${name}`);
    const started = Date.now();
    const { passed, failed } = await stage();
    lines.push(`${name}: ${passed} passed, ${failed} failed (${((Date.now() - started) / 1000).toFixed(1)} s)`);
    total.passed += passed;
    total.failed += failed;
  }
  say(`\n${lines.join('\n')}`);
  say(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
});
rmSync(reports, { recursive: true, force: true });
