import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    environment: 'node',
    coverage: { include: ['sim/**/*.{ts,tsx}', 'main/**/*.{ts,tsx}', 'renderer/**/*.{ts,tsx}'] },
  },
});
