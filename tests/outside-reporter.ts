import { basename } from 'node:path';
import type { Reporter, TestCase, TestModule, Vitest } from 'vitest/node';
import { figureCatalogue } from '../src/findings/index.ts';
import { type OutsideCheck, outsideChecks } from './published/outside-checks.ts';

/**
 * Says at the end of a run of `tests/published` how many checks against outside sources passed, and fails the run
 * where a figure's check did not.
 */
export class OutsideReporter implements Reporter {
  #some = false;

  onInit({ config }: Vitest): void {
    this.#some = config.testNamePattern !== undefined;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    const published = modules.filter(({ moduleId }) =>
      moduleId.replaceAll('\\', '/').includes('/tests/published/'),
    );
    // Only a run of all of them can tell whether one is missing; that a row's file is there is a test of its own.
    if (!published.some(({ moduleId }) => basename(moduleId) === 'outside-checks.test.ts')) return;
    const tests = published.flatMap((module) =>
      [...module.children.allTests()].map((test) => ({ file: basename(module.moduleId), test })),
    );
    const passed = tests.filter(({ test }) => test.result().state === 'passed');
    const ran = new Set(published.map(({ moduleId }) => basename(moduleId)));
    if (this.#some || outsideChecks.some(({ file }) => !ran.has(file))) return;
    const notHeld = outsideChecks.filter((row) => !isHeld(row, passed));
    const held = new Set<string>(
      outsideChecks.filter((row) => !notHeld.includes(row)).flatMap(({ figures }) => figures),
    );
    const names = Object.keys(figureCatalogue);
    const lacking = [...names.filter((name) => !held.has(name)), ...notHeld.map(({ test }) => `"${test}"`)];
    const count = passed.filter(({ file }) => file !== 'outside-checks.test.ts').length;
    const verdict =
      lacking.length === 0
        ? `none of the ${names.length} figures lacks one.`
        : `not there or not passed: ${lacking.join(', ')}.`;
    console.log(`${count} checks against outside sources passed; ${verdict}`);
    if (lacking.length > 0) process.exitCode = 1;
  }
}

interface Ran {
  readonly file: string;
  readonly test: TestCase;
}

/** A title as the source has it: its placeholders (%s, %d) stand for any text, `%%` for one percent sign. */
const asPattern = (title: string): RegExp =>
  new RegExp(
    title
      .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
      .replaceAll('%%', '%')
      .replace(/%[sdif]/g, '.*'),
  );

function isHeld({ file, test }: Pick<OutsideCheck, 'file' | 'test'>, passed: readonly Ran[]): boolean {
  const title = asPattern(test);
  return passed.some((one) => one.file === file && title.test(one.test.fullName));
}
