import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, test, vi } from 'vitest';
import { savePrediction, saveRings, whyNoPrediction, whyNoRings } from '../../../renderer/exports/project-exports';
import { edit, replaceProject, useDocument } from '../../../renderer/state/document-store';
import { withSection } from '../../../renderer/state/edits';
import { useJointsView } from '../../../renderer/state/joints-view';
import { useRun } from '../../../renderer/state/run-store';
import { simulateProject } from '../../../renderer/state/simulate-project';
import { setSwitchedOff, useView } from '../../../renderer/state/view-store';
import type { Project } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { writeProject } from '../../../sim/project/write';
import { taskPool } from '../../../sim/questions/task-pool';
import { inProcessWorker, nothingToDraw } from '../../support/in-process-worker';
import { memoryHost } from '../../support/memory-host';
import { readTable } from '../../support/read-csv';
import { scratchFolder } from '../../support/scratch-folder';
import { captured } from '../command/captured';

const TRIALS = 2000;

function small(title = 'Lantern'): Project {
  const project = exampleProject();
  return { ...project, title, run: { ...project.run, trials: TRIALS } };
}

const isSettled = (): boolean => whyNoPrediction() === null && useRun.getState().work === null;
const settle = (): Promise<void> => vi.waitFor(() => expect(isSettled()).toBe(true), { timeout: 30_000, interval: 10 });

let isSimulating = false;

beforeEach(async () => {
  useView.setState(useView.getInitialState());
  useJointsView.setState(useJointsView.getInitialState());
  replaceProject(small());
  if (!isSimulating) simulateProject(taskPool(2, inProcessWorker), nothingToDraw);
  isSimulating = true;
  await settle();
}, 60_000);

/** The one file that was handed out, as text. */
async function handedOut(save: typeof savePrediction): Promise<{ name: string; text: string }> {
  const host = memoryHost();
  await save(host);
  expect(host.exported).toHaveLength(1);
  const { name, bytes } = host.exported[0]!;
  // The mark of UTF-8 is kept.
  return { name, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
}

function predicted(project: Project, ...options: string[]): Promise<string> {
  const file = join(scratchFolder(), 'lantern.ringtrue.json');
  writeFileSync(file, writeProject(project));
  return captured(['predict', file, '--json', ...options]).then(({ stdout }) => stdout);
}

test('the prediction from the pages is letter for letter what the command prints', async () => {
  const { name, text } = await handedOut(savePrediction);
  expect(name).toBe('lantern-prediction.json');
  expect(text).toBe(await predicted(small()));
});

test('it follows a limit that was moved, and leaves out methods that take no part', async () => {
  edit(withSection('limits', { showGapMm: 0.08 }));
  const names = small().methods.map(({ name }) => name);
  for (const name of names.slice(1)) setSwitchedOff(name, true);
  await settle();
  const { text } = await handedOut(savePrediction);
  const printed = await predicted(useDocument.getState().project, '--method', names[0]!);
  expect(text).toBe(printed);
});

test('the rings are those of the method looked at, every one of them', async () => {
  const [, second] = small().methods;
  useJointsView.setState({ lookedAtMethod: second!.name });
  const { name, text } = await handedOut(saveRings);
  expect(name).toBe('lantern-rings-fixed-stop.csv');
  const { origin, heads, units, rows } = readTable(text);
  expect(origin).toMatchObject({ Project: 'Lantern', Table: 'Single rings of “Fixed stop”', Seed: '7' });
  expect([heads[0], heads[3], units[1]]).toEqual(['Ring', 'Good', 'mm']);
  expect(rows.map(([ring]) => Number(ring))).toEqual(Array.from({ length: TRIALS }, (_, k) => k + 1));
  const good = rows.filter(([, , , isGood]) => isGood === '1').length;
  const { methods } = JSON.parse(await predicted(small(), '--method', second!.name));
  expect(good / TRIALS).toBe(methods[0].yield.value);
});

test('nothing is handed out before the figures are worked out in full, and the reason is a sentence', async () => {
  const host = memoryHost();
  edit(withSection('limits', { hiddenGapMm: 0.3 }));
  expect([whyNoPrediction(), whyNoRings()]).toEqual(Array(2).fill(expect.stringMatching(/^Wait .+\.$/)));
  await savePrediction(host);
  await saveRings(host);
  expect(host.exported).toEqual([]);
  await settle();
  await savePrediction(host);
  expect(host.exported).toHaveLength(1);
});

test('what the host refuses is told in a dialog', async () => {
  await savePrediction(memoryHost({ exportFile: async () => ({ problem: 'The disk is full.' }) }));
  expect(useView.getState().refusal).toEqual({
    title: 'lantern-prediction.json was not saved',
    lines: ['The disk is full.'],
  });
  expect(useView.getState().announcement).not.toContain('prediction.json');
});
