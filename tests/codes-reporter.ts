import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Reporter, TestModule, Vitest } from 'vitest/node';
import { catalogue } from '../src/findings/index.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));

/**
 * Fails a run of all tests where a code of the catalogue was found in none of them (see `record-codes.ts`), or is named in
 * none: then it came up by the way, and nobody would miss it.
 */
export class CodesReporter implements Reporter {
  #some = false;

  onInit({ config }: Vitest): void {
    this.#some = config.testNamePattern !== undefined;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    if (this.#some || modules.length < files.filter((file) => file.endsWith('.test.ts')).length) return;
    const passed = modules.filter((module) => module.state() === 'passed');
    const met = new Set<string>(passed.flatMap((module) => module.meta().codes ?? []));
    const words = new Set(
      files
        .filter((file) => /\.(ts|yaml)$/.test(file))
        .flatMap((file) => readFileSync(join(folder, file), 'utf8').match(/[\w-]+\.[\w-]+/g) ?? []),
    );
    const codes = Object.keys(catalogue);
    const lacking = codes.filter((code) => !met.has(code) || !words.has(code));
    console.log(
      lacking.length === 0
        ? `Each of the ${codes.length} codes of findings was provoked by a test that names it.`
        : `No test provokes and names ${lacking.join(', ')}.`,
    );
    if (lacking.length > 0) process.exitCode = 1;
  }
}
