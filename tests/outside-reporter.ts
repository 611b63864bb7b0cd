import { basename } from 'node:path';
import type { Reporter, TestCase, TestModule } from 'vitest/node';
import { figureCatalogue } from '../src/findings/index.ts';
import { outsideChecks } from './published/outside-checks.ts';

/**
 * Says at the end of a run of `tests/published` how many checks against outside sources passed, and fails the run
 * where a figure's check did not.
 */
export default class OutsideReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const published = modules.filter(({ moduleId }) =>
      moduleId.replaceAll('\\', '/').includes('/tests/published/'),
    );
    // Only a run of all of them can tell whether one is missing.
    if (!published.some(({ moduleId }) => basename(moduleId) === 'outside-checks.test.ts')) return;
    const tests = published.flatMap((module) =>
      [...module.children.allTests()].map((test) => ({ file: basename(module.moduleId), test })),
    );
    const passed = tests.filter(({ test }) => test.result().state === 'passed');
    const ran = new Set(published.map(({ moduleId }) => basename(moduleId)));
    const whole = outsideChecks.every(({ file }) => ran.has(file));
    if (!whole) return;
    const held = outsideChecks.filter((row) => isHeld(row, passed));
    const covered = new Set(held.flatMap(({ figures }) => figures));
    const lacking = Object.keys(figureCatalogue).filter((name) => !new Set<string>(covered).has(name));
    const checks = passed.filter(({ file }) => file !== 'outside-checks.test.ts').length;
    const names = Object.keys(figureCatalogue).length;
    console.log(
      `${checks} checks against outside sources passed; ` +
        (lacking.length === 0 && held.length === outsideChecks.length
          ? `none of the ${names} figures lacks one.`
          : `lacking one: ${[...lacking, ...outsideChecks.filter((row) => !held.includes(row)).map(({ test }) => test)].join(', ')}.`),
    );
    if (lacking.length > 0 || held.length < outsideChecks.length) process.exitCode = 1;
  }
}

interface Ran {
  readonly file: string;
  readonly test: TestCase;
}

// Rows may quote the source's title with a placeholder (%s); up to there it is also in the full name.
const isHeld = (
  { file, test }: { readonly file: string; readonly test: string },
  passed: readonly Ran[],
): boolean => passed.some((one) => one.file === file && one.test.fullName.includes(test));
