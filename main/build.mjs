/**
 * Builds dist/: the pages for any host, and one bundle for each program that Node or Electron runs.
 * Everything is bundled, so that what ships needs no node_modules. The stamp is written last: a build that broke
 * off counts as none.
 */
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { build } from 'vite';
import { BUILD_STAMP, ROOT, sourceMark } from './ready.mjs';

// A test runner that lets a build be made has this say otherwise, and the builder would take what ships for a trial.
process.env.NODE_ENV = 'production';

const PAGES = 'renderer/index.html';

/** Programs that Node or Electron loads as ES modules: name in dist/main → source. */
const PROGRAMS = {
  ringtrue: 'main/command/ringtrue.ts',
  'task-worker': 'main/command/task-worker.ts',
  bench: 'main/command/bench.ts',
  local: 'main/local/serve.ts',
  report: 'renderer/report/render-report.tsx',
  shell: 'main/shell/shell.ts',
};

/** A sandboxed preload script can only be CommonJS in one file. */
const PRELOAD = 'main/shell/preload.ts';

/** @type {import('vite').InlineConfig} */
const common = {
  configFile: false,
  logLevel: 'warn',
  clearScreen: false,
  mode: 'production',
  define: { 'process.env.NODE_ENV': '"production"' },
};

/** @returns {Promise<unknown>} */
function buildPages() {
  return build({
    ...common,
    root: join(ROOT, 'renderer'),
    base: '/',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: join(ROOT, 'dist/renderer'),
      emptyOutDir: true,
      // Inlined assets would be data: addresses, which the content security policy refuses.
      assetsInlineLimit: 0,
      chunkSizeWarningLimit: 4000,
    },
  });
}

/**
 * @param {Record<string, string>} entries
 * @param {'es' | 'cjs'} format
 * @param {string} fileNames
 * @returns {Promise<unknown>}
 */
function buildForNode(entries, format, fileNames) {
  return build({
    ...common,
    root: ROOT,
    publicDir: false,
    ssr: { noExternal: true, external: ['electron'] },
    build: {
      ssr: true,
      target: 'node20',
      outDir: join(ROOT, 'dist/main'),
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: Object.fromEntries(Object.entries(entries).map(([name, source]) => [name, join(ROOT, source)])),
        output: { format, entryFileNames: fileNames, chunkFileNames: 'parts/[name]-[hash].js' },
      },
    },
  });
}

const missing = [PAGES, ...Object.values(PROGRAMS), PRELOAD].filter((source) => !existsSync(join(ROOT, source)));
if (missing.length > 0) {
  process.stderr.write(`Cannot build: ${missing.join(', ')} not found.\n`);
  process.exit(1);
}

const mark = sourceMark();
rmSync(BUILD_STAMP, { force: true });
rmSync(join(ROOT, 'dist/main'), { recursive: true, force: true });
await buildPages();
await buildForNode(PROGRAMS, 'es', '[name].js');
await buildForNode({ preload: PRELOAD }, 'cjs', '[name].cjs');
writeFileSync(BUILD_STAMP, mark);
