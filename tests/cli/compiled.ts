import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The compiled program, as `npm test` makes it first: it starts in a moment, also on its worker threads. */
export const compiledProgram = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));

/** Runs one command line of the compiled program; what it writes to both streams, as plain text. */
export function runCompiled(...args: readonly string[]): Promise<{ code: number | null; out: string }> {
  const child = spawn(process.execPath, [compiledProgram, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
  }
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, out })));
}
