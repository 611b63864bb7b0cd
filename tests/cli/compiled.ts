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

/** What one of several command lines left: both streams as plain text, and what it cost. */
export interface RanInTurn {
  readonly code: number;
  readonly out: string;
  readonly cpuSeconds: number;
  /** The most this process has held up to the end of it. */
  readonly megabytes: number;
}

/** Runs command lines of the compiled program one after the other in one process; those it did not live to see lack. */
export function runInTurn(
  commands: readonly (readonly string[])[],
  flags: readonly string[] = [],
): Promise<RanInTurn[]> {
  const script = fileURLToPath(new URL('in-turn.mjs', import.meta.url));
  const child = spawn(process.execPath, [...flags, script, JSON.stringify(commands)], {
    stdio: ['ignore', 'inherit', 'inherit', 'pipe'],
    timeout: 240_000,
    killSignal: 'SIGKILL',
  });
  let told = '';
  child.stdio[3]?.on('data', (chunk: Buffer) => {
    told += chunk.toString();
  });
  const ran = (): RanInTurn[] =>
    told
      .split('\n')
      .slice(0, -1)
      .map((line) => JSON.parse(line));
  return new Promise((resolve) => child.on('close', () => resolve(ran())));
}
