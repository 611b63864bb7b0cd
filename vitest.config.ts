import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { CodesReporter } from './tests/codes-reporter.ts';
import { OutsideReporter } from './tests/outside-reporter.ts';
import { SlowestReporter } from './tests/slowest-reporter.ts';

/** Tests of seconds and more, longest first: dense meshes, many random trials, whole programs. */
const long = [
  'presets/judged',
  'cli/batch-killed',
  'presets/plans',
  'cli/batch',
  'presets/masters',
  'faults/single-faults',
  'figurine-discs',
  'faults/disc-and-sprue',
  'cli/build',
  'walks/walks',
  'plan/hostile-plans',
  'plan/every-field',
  'mold/parting',
  'pipeline/master-scale',
  'published/fill-levels',
  'mesh/repair/mend-crossings',
  'parts/supports/build-up',
  'pipeline/cache',
  'presets/*',
  'cli/*',
  'cli/cache/*',
  'published/open-meshes',
  'faults/bad-input',
  'mesh/repair/repair-mesh',
  'mesh/repair/repair-refused',
  'mesh/read-mutated',
  'parts/halves/curved-halves',
  'parts/cutting/left-by-cutter',
  'export/audit',
  'mesh/read/read',
  'faults/whole-reports',
  'export/picture',
  'mesh/measure/distance-all-pairs',
  'parts/supports/nest',
];
const asFile = (name: string): string => `tests/${name}.test.ts`;
const gone = long.filter((name) => !name.endsWith('*') && !existsSync(asFile(name)));
if (gone.length > 0) throw new Error(`vitest.config.ts lists tests that are not there: ${gone.join(', ')}`);

// One cache for all tests of a run, none of the person's own: what several build is made once.
const cache = mkdtempSync(join(tmpdir(), 'cache-of-tests-'));
process.env.XDG_CACHE_HOME = cache;
process.on('exit', () => rmSync(cache, { recursive: true, force: true }));

/** Projects in the order they are begun: what takes longest first, so that no worker is left with it at the end. */
const order = ['long', 'browser', 'alone', 'units'];

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ project, moduleId }: TestSpecification): number => {
      const listed = long.findIndex((name) => moduleId.endsWith(asFile(name)));
      return order.indexOf(project.name) * 1000 + (listed < 0 ? 999 : listed);
    };
    // Those of one rank as they come: by what they took the last time.
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    // Solids are built for real: a slow shared machine must not turn a long test into a failed one.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    setupFiles: ['tests/record-codes.ts'],
    reporters: [
      'default',
      new OutsideReporter(),
      new CodesReporter(),
      ...(process.env.CI === 'true' ? [new SlowestReporter()] : []),
    ],
    projects: [
      {
        extends: true,
        // Loading what a file imports takes longer than most of its tests: loaded once for all, and warm.
        test: {
          name: 'units',
          include: ['tests/**/*.test.ts'],
          exclude: [...long.map(asFile), 'tests/{browser,preview}/**'],
          isolate: false,
        },
      },
      { extends: true, test: { name: 'long', include: long.map(asFile), isolate: false } },
      // Some put another module in the place of one: a process each.
      { extends: true, test: { name: 'alone', include: ['tests/preview/**/*.test.ts'] } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/one-browser.ts'],
        },
      },
    ],
  },
});
