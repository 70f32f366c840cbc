import { defineConfig } from 'vitest/config';

/** What renders pages, keeps something in a store, stands in for a module or starts programs has a process a file. */
const BY_THEMSELVES = ['test/unit/{files,hosts,inputs,renderer,report}/**/*.test.{ts,tsx}', 'test/**/*.test.tsx'];

export default defineConfig({
  test: {
    // Long enough for a machine that is busy with other work; speed is measured by the bench, never by a test.
    testTimeout: 90_000,
    // By itself it leaves one core idle, which is half of a small machine.
    maxWorkers: '100%',
    environment: 'node',
    coverage: { include: ['sim/**/*.{ts,tsx}', 'main/**/*.{ts,tsx}', 'renderer/**/*.{ts,tsx}'] },
    projects: [
      {
        extends: true,
        // Loading the engine anew for each of a hundred files took longer than their tests.
        test: { name: 'together', include: ['test/**/*.test.ts'], exclude: BY_THEMSELVES, isolate: false },
      },
      { extends: true, test: { name: 'by themselves', include: BY_THEMSELVES } },
    ],
  },
});
