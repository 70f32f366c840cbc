import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // Long enough for a machine that is busy with other work; speed is measured by the bench, never by a test.
    testTimeout: 90_000,
    include: ['test/**/*.test.{ts,tsx}'],
    environment: 'node',
    coverage: { include: ['sim/**/*.{ts,tsx}', 'main/**/*.{ts,tsx}', 'renderer/**/*.{ts,tsx}'] },
  },
});
