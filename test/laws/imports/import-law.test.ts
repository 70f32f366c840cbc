import { describe, expect, it } from 'vitest';
import { ROOT } from '../../../main/ready.mjs';
import { breachesIn, circlesIn, RENDERER_FLOORS, SIM_FLOORS, sourcesUnderLaw } from '../../support/import-law';

describe('the import law', () => {
  const sources = sourcesUnderLaw(ROOT);

  it('sees the engine, the hosts and the pages', () => {
    for (const file of ['sim/project/document.ts', 'main/contract/host.ts', 'renderer/host/browser-host.ts']) {
      expect(sources.map((source) => source.file)).toContain(file);
    }
  });

  it('knows every folder of the engine', () => {
    const folders = sources.flatMap(({ file }) => /^sim\/([^/]+)\//.exec(file)?.[1] ?? []);
    expect([...new Set(folders)].toSorted()).toEqual([...SIM_FLOORS].toSorted());
  });

  it('finds no circle of files', () => {
    expect(circlesIn(sources)).toEqual([]);
  });

  it('would find one', () => {
    const circle = [
      { file: 'sim/run/a.ts', source: "import { b } from './b';" },
      { file: 'sim/run/b.ts', source: "import type { C } from '../errors/c';" },
      { file: 'sim/errors/c.ts', source: "import { a } from '../run/a';" },
    ];
    expect(circlesIn(circle)).toEqual([['sim/run/a', 'sim/run/b', 'sim/errors/c']]);
    expect(circlesIn(circle.slice(0, 2))).toEqual([]);
  });

  it('holds in every file', () => {
    expect(sources.flatMap(({ file, source }) => breachesIn(file, source))).toEqual([]);
  });
});

describe('a breach of the import law is found', () => {
  it.each([
    ['sim/run/block.ts', "import { app } from 'electron';", 'sim may not import electron'],
    ['sim/statistics/wilson.ts', "import type { Share } from '../run/prediction';", 'sim/statistics is below sim/run'],
    ['sim/run/plan.ts', "import { cost } from '../decide/aim';", 'sim/run is below sim/decide'],
    ['sim/run/block.ts', "import { readFileSync } from 'node:fs';", 'sim may not import node:fs'],
    ['sim/run/block.ts', "import fs from 'fs';", 'sim may not import fs'],
    ['sim/run/block.ts', "import { z } from 'zod';", 'sim may not import zod'],
    [
      'sim/run/block.ts',
      "import type { Host } from '../../main/contract/host';",
      'sim may not import main/contract/host',
    ],
    ['sim/run/block.ts', "export * from '../../renderer/state/store';", 'sim may not import renderer/state/store'],
    ['sim/run/block.ts', "export { a } from 'react';", 'sim may not import react'],
    ['sim/run/block.ts', "const a = await import('react');", 'sim may not import react'],
    ['sim/run/block.ts', 'const a = await import(name);', 'sim may not import (computed)'],
    ['sim/run/block.ts', "type A = import('react').FC;", 'sim may not import react'],
    ['sim/run/block.ts', 'const a = Math.random();', 'sim may not use Math.random'],
    ['sim/run/block.ts', "const a = Math['random']();", 'sim may not use Math.random'],
    ['sim/run/block.ts', 'const a = Date.now();', 'sim may not use Date.now'],
    ['sim/run/block.ts', 'const a = new Date();', 'sim may not use Date'],
    ['sim/run/block.ts', 'const a = performance.now();', 'sim may not use performance'],
    [
      'renderer/pages/verdict.tsx',
      "import { readFile } from 'node:fs/promises';",
      'renderer may not import node:fs/promises',
    ],
    ['renderer/pages/verdict.tsx', "import { ipcRenderer } from 'electron';", 'renderer may not import electron'],
    ['renderer/pages/verdict.tsx', "import '../../main/local/serve';", 'renderer may not import main/local/serve'],
    [
      'renderer/pages/verdict.tsx',
      "import { CHANNELS } from '../../main/contract/channels';",
      'renderer may import only types from main/contract/channels',
    ],
    ['renderer/worker/entry.ts', "import { useState } from 'react';", 'renderer/worker may not import react'],
    [
      'renderer/worker/entry.ts',
      "import { store } from '../state/store';",
      'renderer/worker may not import renderer/state/store',
    ],
    [
      'renderer/worker/entry.ts',
      "import type { Host } from '../../main/contract/host';",
      'renderer/worker may not import main/contract/host',
    ],
    ['main/command/predict.ts', "import { app } from 'electron';", 'main may not import electron'],
    ['main/command/predict.ts', "import { useState } from 'react';", 'main may not import react'],
    [
      'main/command/predict.ts',
      "import { x } from '../../renderer/state/store';",
      'main may not import renderer/state/store',
    ],
    ['main/command/report.ts', 'const a = await import(name);', 'main may not import (computed)'],
    [
      'main/print/load-report-program.ts',
      "import { x } from '../../renderer/report/sheet';",
      'main may not import renderer/report/sheet',
    ],
    ['main/contract/host.ts', "import { x } from '../files/places';", 'main/contract may not import main/files/places'],
    [
      'main/shell/shell.ts',
      "import { ipcMain as ears } from 'electron';",
      'only main/shell/listen-to-pages.ts may use ipcMain',
    ],
    [
      'main/shell/window.ts',
      "browserWindow.webContents.ipc.on('ringtrue:more', () => {});",
      'only main/shell/listen-to-pages.ts may use ipc',
    ],
  ])('%s: %s', (file, source, what) => {
    expect(breachesIn(file, source).map((breach) => breach.what)).toContain(what);
  });
});

describe('the floors inside the pages', () => {
  it('name every folder of the pages', () => {
    const folders = sourcesUnderLaw(ROOT).flatMap(({ file }) => /^renderer\/([^/]+)\//.exec(file)?.[1] ?? []);
    expect(Object.keys(RENDERER_FLOORS).sort()).toEqual([...new Set(folders)].sort());
  });

  it('go up: each stands on floors named before it, and none on the app', () => {
    const order = Object.keys(RENDERER_FLOORS);
    for (const [floor, { on, typesFrom = [] }] of Object.entries(RENDERER_FLOORS)) {
      for (const under of [...on, ...typesFrom]) {
        expect(order.indexOf(under), `${floor} on ${under}`).toBeGreaterThanOrEqual(0);
        expect(order.indexOf(under), `${floor} on ${under}`).toBeLessThan(order.indexOf(floor));
      }
    }
  });

  it.each([
    ['renderer/charts/gap-rows.tsx', "import { x } from '../app/x';", 'renderer/charts does not stand on renderer/app'],
    [
      'renderer/parts/scrolls.tsx',
      "import type { X } from '../app/x';",
      'renderer/parts does not stand on renderer/app',
    ],
    [
      'renderer/parts/scrolls.tsx',
      "import { x } from '../charts/x';",
      'renderer/parts does not stand on renderer/charts',
    ],
    ['renderer/state/edits.ts', "import { x } from '../parts/x';", 'renderer/state does not stand on renderer/parts'],
    [
      'renderer/inputs/units.ts',
      "const a = await import('../state/x');",
      'renderer/inputs does not stand on renderer/state',
    ],
    [
      'renderer/report/sheet.tsx',
      "import '../pages/verdict/x.css';",
      'renderer/report does not stand on renderer/pages/verdict',
    ],
    [
      'renderer/pages/joints/joints-page.tsx',
      "import { x } from '../verdict/x';",
      'renderer/pages/joints does not stand on renderer/pages/verdict',
    ],
    [
      'renderer/pages/joints/joints-page.tsx',
      "import { x } from '../../worker/questions';",
      'renderer/pages/joints does not stand on renderer/worker',
    ],
  ])('are not gone against: %s: %s', (file, source, what) => {
    expect(breachesIn(file, source).map((breach) => breach.what)).toEqual([what]);
  });

  it.each([
    ['renderer/pages/joints/joints-page.tsx', "import { x } from './x';\nimport { y } from '../../charts/y';"],
    ['renderer/pages/joints/joints-page.tsx', "import type { X } from '../../worker/questions';"],
    ['renderer/app/root.tsx', "import { x } from '../pages/joints/x';\nimport { y } from './y';"],
  ])('may be stood on: %s: %s', (file, source) => {
    expect(breachesIn(file, source)).toEqual([]);
  });
});

describe('what the table allows', () => {
  it.each([
    ['sim/project/read.ts', "import { z } from 'zod';\nimport { ring } from '../geometry/ring';"],
    [
      'renderer/pages/verdict/verdict.tsx',
      "import type { Host } from '../../../main/contract/host';\nimport './verdict.css';\nconst a = <p />;",
    ],
    ['renderer/worker/entry.ts', "import { run } from '../../sim/run/run';"],
    ['main/shell/shell.ts', "import { app } from 'electron';\nimport { join } from 'node:path';"],
    ['main/command/predict.ts', "import { Worker } from 'node:worker_threads';\nconst now = performance.now();"],
    ['sim/run/block.ts', '// Math.random and Date.now are banned\nconst text = "import x from \'react\'";'],
  ])('%s', (file, source) => {
    expect(breachesIn(file, source)).toEqual([]);
  });
});
