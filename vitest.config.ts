import { defineConfig } from 'vitest/config';
import { OutsideReporter } from './tests/outside-reporter.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Solids are built for real: a slow shared machine must not turn a long test into a failed one.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    maxWorkers: 2,
    reporters: ['default', new OutsideReporter()],
  },
});
