import { fileURLToPath } from 'node:url';
import { afterEach } from 'vitest';
import { catalogue, type FindingCode } from '../src/findings/index.ts';

// Before each test file: which codes the program itself finds while the file's tests run. A finding looks up its code
// in the catalogue as it is made; what a test makes by hand, and what only lists the catalogue, does not count.

declare module 'vitest' {
  interface TaskMeta {
    codes?: readonly FindingCode[];
  }
}

const root = fileURLToPath(new URL('..', import.meta.url)).replaceAll('\\', '/');
const met = new Set<FindingCode>();

/** True where the catalogue is asked as a finding is made, and that by the program. */
function isFound(stack: string): boolean {
  const frames = stack.replaceAll('\\', '/').split('\n').slice(2);
  const from = (frame: string): string => frame.split(root)[1] ?? '';
  const outside = frames.findIndex((frame) => !from(frame).startsWith('src/findings/'));
  const isMade = frames.slice(0, outside).some((frame) => /^ *at findingWith /.test(frame));
  return isMade && /^(src|cli)\//.test(from(frames[outside]));
}

for (const code of Object.keys(catalogue) as FindingCode[]) {
  const entry = catalogue[code];
  Object.defineProperty(catalogue, code, {
    configurable: true,
    enumerable: true,
    get: () => {
      if (!met.has(code) && isFound(new Error().stack ?? '')) met.add(code);
      return entry;
    },
  });
}

afterEach(({ task }) => {
  task.file.meta.codes = [...met];
});
