import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import { afterAll } from 'vitest';
import type { ExitCode } from '../../cli/exit.ts';
import { runProgram } from '../../cli/program.ts';
import { plain, type Terminal } from '../../cli/terminal.ts';

/** What one run of the program left: its exit code and all it wrote to either stream. */
export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line in this process, with a terminal that keeps what is written to it. */
export const run = (...args: readonly string[]): Promise<Ran> => runAnswering([], ...args);

/** The same with somebody there who gives these answers, one a question, and then leaves. */
export async function runAnswering(answers: readonly string[], ...args: readonly string[]): Promise<Ran> {
  const lines: { out: string[]; err: string[] } = { out: [], err: [] };
  const terminal: Terminal = {
    out: (text) => void lines.out.push(plain(text)),
    err: (text) => void lines.err.push(plain(text)),
    width: 100,
    openAsk: () => {
      const left = [...answers];
      const ask = async (question: string): Promise<string | undefined> => {
        lines.err.push(question);
        return left.shift();
      };
      return { ask, close: () => {} };
    },
  };
  const code = await runProgram(args, terminal);
  return { code, out: lines.out.join('\n'), err: lines.err.join('\n') };
}

/** A folder of its own for one test file; gone when the file's tests are done. */
export function workbench() {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const path = (name: string): string => join(folder, name);
  return {
    folder,
    path,
    /** Writes a file and returns its path. */
    put(name: string, content: string | Uint8Array): string {
      writeFileSync(path(name), content);
      return path(name);
    },
  };
}

/** Every file under a folder by its relative path; nothing where there is no folder. */
export function filesIn(folder: string): Map<string, Uint8Array> {
  const found = new Map<string, Uint8Array>();
  const walk = (at: string): void => {
    for (const entry of readdirSync(at).sort()) {
      const full = join(at, entry);
      if (statSync(full).isDirectory()) walk(full);
      else found.set(relative(folder, full).split(sep).join('/'), readFileSync(full));
    }
  };
  try {
    walk(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  return found;
}

/** SHA-256 of every file under a folder, by relative path. */
export const digestsIn = (folder: string): Map<string, string> =>
  new Map([...filesIn(folder)].map(([path, bytes]) => [path, sha256(bytes)]));

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** No run may show a stack trace, whatever it is given. */
export const stackTrace = /\n\s+at .*:\d+:\d+|TypeError|RangeError|ReferenceError|node:internal/;
