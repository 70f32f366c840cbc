/**
 * `npm run bench`: how many rings a second one core simulates, twelve staves and every error source at work; what
 * threads gain, how soon a stop is obeyed and how long a question takes; and how long whole commands take.
 */

import { fileURLToPath } from 'node:url';
import type { Method, Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { fillNormals } from '../../sim/random/normal';
import { stream } from '../../sim/random/streams';
import { runBlock } from '../../sim/run/block';
import { BLOCK_TRIALS } from '../../sim/run/block-loop';
import { methodPlan, type PlanOptions } from '../../sim/run/plan';
import { benchCommands } from './bench-commands';
import { budgetOnAllCores, type MeasureRow, stopIsObeyed, twoThreadsOverOne } from './bench-threads';

/** The example with every source of the first method above zero. */
function everySource(
  sequence: Method['sequence'],
  change: (project: Project, method: Method) => void = () => {},
): Project {
  const project = exampleProject();
  const method = project.methods[0]!;
  method.sequence = sequence;
  delete project.piece.insert;
  method.tilt = { ...method.tilt, biasDeg: 0.01, sharedDeg: 0.1, sideDeg: 0.02, perCutDeg: 0.03 };
  method.guide = { ...method.guide, zeroDeg: 0.1, settingDeg: 0.1, slotDeg: 0.05, seatMm: 0.05 };
  method.wideFace = 'up';
  method.width = {
    by: 'fixedStop',
    sharedMm: 0.1,
    perCutMm: 0.05,
    driftMeanMm: 0.002,
    driftSigmaMm: 0.005,
    chipChance: 0.02,
    chipMeanMm: 0.1,
  };
  method.blade = {
    ...method.blade,
    kerfSigmaMm: 0.03,
    forceMeanN: 0.5,
    forceSigmaN: 2,
    forceWithinCutN: 1,
    snagChance: 0.001,
  };
  change(project, method);
  return project;
}

interface Row {
  name: string;
  ringsPerSecond: number;
  wanted?: number;
}

const SECONDS_A_ROW = 1;

function measure(name: string, project: Project, options: PlanOptions, wanted?: number): Row {
  const plan = methodPlan(project, 0, options);
  const perSecond = best((seconds) => {
    const start = performance.now();
    let rings = 0;
    let block = 0;
    do {
      runBlock(plan, 1, block++, BLOCK_TRIALS);
      rings += BLOCK_TRIALS;
    } while (performance.now() - start < seconds * 1000);
    return (rings / (performance.now() - start)) * 1000;
  });
  return { name, ringsPerSecond: Math.round(perSecond), ...(wanted !== undefined && { wanted }) };
}

/** A yardstick for the machine itself: a quiet one of the kind the goals are meant for makes about 300 million. */
function normals(): Row {
  const generator = stream(1, 'bench', 0);
  const z = new Float64Array(1000);
  const perSecond = best((seconds) => {
    const start = performance.now();
    let made = 0;
    do {
      fillNormals(generator, z);
      made += z.length;
    } while (performance.now() - start < seconds * 1000);
    return (made / (performance.now() - start)) * 1000;
  });
  return { name: 'standard normals (not rings)', ringsPerSecond: Math.round(perSecond) };
}

/** The best of three after a warm-up: other work on the machine only ever makes it slower. */
function best(perSecond: (seconds: number) => number): number {
  perSecond(0.3);
  return Math.max(...[1, 2, 3].map(() => perSecond(SECONDS_A_ROW / 3)));
}

export function bench(): Row[] {
  const swap = everySource('swapSides');
  const flip = everySource('flipFace');
  const oneByOne = everySource('flipFace', (_, method) => {
    method.assembly = { ...method.assembly, by: 'oneByOne' };
  });
  const sixty = everySource('flipFace', (project) => {
    project.piece.sides = 60;
    project.piece.size = { by: 'outsideFlats', mm: 1400 };
    delete project.piece.insert;
    delete project.stock.stripLengthMm;
  });
  return [
    normals(),
    measure('touch, collapsed, sides swapped', swap, { rule: 'touch', sizes: false }, 2_500_000),
    measure('touch, collapsed, face flipped', flip, { rule: 'touch', sizes: false }, 2_500_000),
    measure('touch, collapsed, with sizes', flip, { rule: 'touch' }),
    measure('touch, plain, sides swapped', swap, { rule: 'touch', engine: 'plain', sizes: false }, 500_000),
    measure('touch, plain, face flipped', flip, { rule: 'touch', engine: 'plain', sizes: false }, 500_000),
    measure('contact, collapsed, sides swapped', swap, { rule: 'contact', sizes: false }, 50_000),
    measure('contact, collapsed, face flipped', flip, { rule: 'contact', sizes: false }, 50_000),
    measure('contact, one by one, three free', oneByOne, { rule: 'contact', sizes: false }),
    measure('contact, 60 staves', sixty, { rule: 'contact', sizes: false }),
  ];
}

/** Time a ring of sixty staves over one of twelve; five times the staves may take five times as long. */
function sixtyOverTwelve(measured: readonly Row[]): MeasureRow {
  const speed = (name: string) => measured.find((row) => row.name === name)?.ringsPerSecond ?? Number.NaN;
  const value = Number((speed('contact, collapsed, face flipped') / speed('contact, 60 staves')).toFixed(2));
  return { name: 'time of 60 staves over 12, contact', value, unit: 'times', wanted: 5, wantedIs: 'most' };
}

const workerProgram = new URL('task-worker.js', import.meta.url);
const rows = bench();
const measures = [
  sixtyOverTwelve(rows),
  await twoThreadsOverOne(everySource('flipFace'), workerProgram),
  await stopIsObeyed(20_000, 1, workerProgram),
  await stopIsObeyed(100_000, 1, workerProgram),
  await stopIsObeyed(20_000, 1000, workerProgram),
  await budgetOnAllCores(workerProgram),
];
const commands = benchCommands(fileURLToPath(new URL('../..', import.meta.url)));
if (process.argv.includes('--json')) {
  process.stdout.write(`${JSON.stringify({ staves: 12, rows, measures, commands }, null, 2)}\n`);
} else {
  const width = Math.max(...[...rows, ...measures, ...commands].map((row) => row.name.length));
  process.stdout.write('Rings per second on one core, 12 staves unless said otherwise, every error source at work\n\n');
  for (const { name, ringsPerSecond, wanted } of rows) {
    const goal = wanted === undefined ? '' : `   (wanted: ${wanted.toLocaleString('en')})`;
    process.stdout.write(`${name.padEnd(width)}  ${ringsPerSecond.toLocaleString('en').padStart(11)}${goal}\n`);
  }
  process.stdout.write('\nThreads, staves, stops and questions\n\n');
  for (const { name, value, unit, wanted, wantedIs } of measures) {
    const goal = `(wanted: at ${wantedIs} ${wanted})`;
    process.stdout.write(`${name.padEnd(width)}  ${`${value} ${unit}`.padStart(11)}   ${goal}\n`);
  }
  process.stdout.write('\nSeconds a whole command takes, on all cores, from its start to its end\n\n');
  for (const { name, seconds, wantedSeconds } of commands) {
    process.stdout.write(`${name.padEnd(width)}  ${seconds.toFixed(2).padStart(11)}   (wanted: ${wantedSeconds})\n`);
  }
}
