/**
 * `npm test`: everything that can be checked, on a bare clone. Every stage runs even when an earlier one failed; the
 * last line says how many checks passed and failed. A stage in which nothing ran, and a skipped test, count as failed:
 * neither shows that anything works. `npm run test:everything`, before a release, has every journey on both hosts, and
 * the long runs at full length.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ensureChromium, ensureInstalled, orSayWhy, ROOT } from '../main/ready.mjs';

/** @typedef {{ passed: number, failed: number }} Count */
/** @typedef {{ file: string, seconds: number }} FileTime */

const isEverything = process.argv.includes('--everything');
const SLOWEST = 15;

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}

/**
 * Runs one program.
 *
 * @param {string} tool its name in node_modules/.bin, or `node`
 * @param {string[]} toolArguments
 * @param {object} [how]
 * @param {NodeJS.ProcessEnv} [how.environment]
 * @param {boolean} [how.isBeside] it runs beside another program: what it says is held back until it has ended
 * @returns {Promise<boolean>} whether it ended well
 */
async function runs(tool, toolArguments, { environment = {}, isBeside = false } = {}) {
  const onWindows = process.platform === 'win32';
  const program =
    tool === 'node' ? process.execPath : join(ROOT, 'node_modules', '.bin', onWindows ? `${tool}.cmd` : tool);
  const child = spawn(program, toolArguments, {
    cwd: ROOT,
    env: { ...process.env, ...environment },
    stdio: ['ignore', isBeside ? 'pipe' : 'inherit', isBeside ? 'pipe' : 'inherit'],
    shell: onWindows,
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (text) => {
      said += text;
    });
  }
  const [code] = await once(child, 'close');
  process.stdout.write(said);
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

/** @type {Record<string, FileTime[]>} by kind: how long each file's tests took, added up */
const fileTimes = {};

/** @param {string} kind */
function saySlowest(kind) {
  say(`\nThe ${SLOWEST} slowest files of the ${kind}:`);
  const slowest = (fileTimes[kind] ?? []).toSorted((a, b) => b.seconds - a.seconds).slice(0, SLOWEST);
  for (const { file, seconds } of slowest) say(`${seconds.toFixed(1).padStart(7)} s  ${file}`);
}

const reports = mkdtempSync(join(tmpdir(), 'ringtrue-test-'));

/** @returns {Promise<Count>} */
async function types() {
  let clean = true;
  for (const project of ['sim', 'main', 'renderer', 'test', 'e2e']) {
    if (!(await runs('tsc', ['-p', project], { isBeside: true }))) clean = false;
  }
  return one(clean);
}

/** @returns {Promise<Count>} */
async function lint() {
  return one(await runs('biome', ['ci', '--colors=off', '--error-on-warnings', '.'], { isBeside: true }));
}

/** @returns {Promise<Count>} */
async function build() {
  return one(await runs('node', ['main/build.mjs']));
}

/** @returns {Promise<Count>} */
async function packaging() {
  return one(await runs('node', ['test/pack-check.mjs'], { isBeside: true }));
}

/** @returns {Promise<Count>} */
async function unit() {
  const file = join(reports, 'unit.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const environment = isEverything ? { RINGTRUE_KILLS: process.env.RINGTRUE_KILLS ?? '200' } : {};
  const endedWell = await runs('vitest', ['run', ...reporters], { environment });
  const report = readReport(file);
  if (!report) return { passed: 0, failed: 1 };
  fileTimes['unit tests'] = report.testResults.map((/** @type {any} */ { name, startTime, endTime }) => ({
    file: relative(ROOT, name),
    seconds: (endTime - startTime) / 1000,
  }));
  const notRun = report.numPendingTests + report.numTodoTests;
  if (notRun > 0) say(`${notRun} tests did not run; they count as failed.`);
  return settle(endedWell, { passed: report.numPassedTests, failed: report.numFailedTests + notRun });
}

/**
 * @param {any} suite of Playwright's report
 * @returns {FileTime[]} one for each test in it
 */
function timesIn(suite) {
  const own = (suite.specs ?? []).flatMap((/** @type {any} */ { file, tests }) =>
    tests.flatMap((/** @type {any} */ { projectName, results }) =>
      results.map((/** @type {any} */ { duration }) => ({
        file: `e2e/${file}, ${projectName}`,
        seconds: duration / 1000,
      })),
    ),
  );
  return [...own, ...(suite.suites ?? []).flatMap(timesIn)];
}

/** @returns {Promise<Count>} */
async function journeys() {
  const file = join(reports, 'e2e.json');
  const environment = {
    PLAYWRIGHT_JSON_OUTPUT_FILE: file,
    ...(isEverything && { RINGTRUE_JOURNEYS: 'everything', RINGTRUE_SOAK: process.env.RINGTRUE_SOAK ?? '2000' }),
  };
  const endedWell = await runs('playwright', ['test', '--reporter=list,json'], { environment });
  const report = readReport(file);
  if (!report) return { passed: 0, failed: 1 };
  const together = new Map();
  for (const { file, seconds } of timesIn(report)) together.set(file, (together.get(file) ?? 0) + seconds);
  fileTimes.journeys = [...together].map(([file, seconds]) => ({ file, seconds }));
  const { expected, unexpected, flaky, skipped } = report.stats;
  if (skipped > 0) say(`${skipped} tests did not run; they count as failed.`);
  if (flaky > 0) say(`${flaky} journeys passed only at the second try; the list above names them.`);
  return settle(endedWell, { passed: expected + flaky, failed: unexpected + skipped });
}

const total = { passed: 0, failed: 0 };
/** @type {string[]} */
const lines = [];

/**
 * @param {string} name
 * @param {() => Promise<Count>} work
 */
async function stage(name, work) {
  say(`\n== ${name}`);
  const started = Date.now();
  const { passed, failed } = await work();
  lines.push(`${name}: ${passed} passed, ${failed} failed (${((Date.now() - started) / 1000).toFixed(1)} s)`);
  total.passed += passed;
  total.failed += failed;
}

await orSayWhy(async () => {
  const started = Date.now();
  await ensureInstalled();
  await ensureChromium();
  await stage('build', build);
  const beside = stage('types', types)
    .then(() => stage('lint', lint))
    .then(() => stage('packaging', packaging));
  await Promise.all([stage('unit tests', unit), beside]);
  await stage('journeys', journeys);
  for (const kind of Object.keys(fileTimes)) saySlowest(kind);
  const seconds = Math.round((Date.now() - started) / 1000);
  say(`\n${lines.join('\n')}`);
  say(`All of it took ${Math.floor(seconds / 60)} min ${seconds % 60} s, installation and build included.`);
  say(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
});
rmSync(reports, { recursive: true, force: true });
