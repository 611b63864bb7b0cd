import { defineConfig } from 'vitest/config';

/** The tests that are run against each change to `src/physics`, in one process. */
export default defineConfig({
  test: {
    include: [
      'tests/physics/**/*.test.ts',
      'tests/published/{can-wall,closing,spin,tightening,turning,superheat}.test.ts',
    ],
    testTimeout: 60_000,
  },
});
