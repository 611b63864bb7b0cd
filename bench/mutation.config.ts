import { defineConfig } from 'vitest/config';

/** The tests that are run against each change to `src/physics` and `src/checks/{can,heat,turning}`, in one process. */
export default defineConfig({
  test: {
    include: [
      'tests/physics/**/*.test.ts',
      'tests/published/{can-*,clash,closing,cure,fill,flash,heat,heat-limits,lid,lidded-cure,molten,pack,play,pours}.test.ts',
      'tests/published/{setting,shot,spew,spin,squeeze,superheat,tightening,turning}.test.ts',
      'tests/checks/{registration,turning}/**/*.test.ts',
      'tests/checks/from-mold/hexagon-boss.test.ts',
      'tests/faults/single-faults.test.ts',
    ],
    testTimeout: 60_000,
  },
});
