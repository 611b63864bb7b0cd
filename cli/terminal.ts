import pc from 'picocolors';
import type { Severity } from '../src/findings/index.ts';

/** Where a command writes: results on `out`, progress and faults on `err`. Tests pass their own. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  readonly isTerminal: boolean;
}

// A reader such as `head` may close the pipe early; that is its right and no fault of ours.
const quietOnClosedPipe = (stream: NodeJS.WriteStream): NodeJS.WriteStream =>
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });

/** The real terminal; made when the program starts. */
export function processTerminal(): Terminal {
  const out = quietOnClosedPipe(process.stdout);
  const err = quietOnClosedPipe(process.stderr);
  return {
    out: (text) => void out.write(`${text}\n`),
    err: (text) => void err.write(`${text}\n`),
    isTerminal: process.stderr.isTTY === true,
  };
}

/** The severity as a word; color only repeats it, and only on a terminal (picocolors obeys NO_COLOR). */
export function severityMark(severity: Severity): string {
  const word = severity.padEnd(4);
  if (severity === 'stop') return pc.red(word);
  return severity === 'warn' ? pc.yellow(word) : pc.dim(word);
}

export const strong = (text: string): string => pc.bold(text);

/** Rows as aligned columns; columns named in `right` (by index) are flushed right. */
export function table(rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          right.includes(column) ? cell.padStart(widths[column]) : cell.padEnd(widths[column]),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Breaks text at spaces to lines of at most `width`, continuation lines indented. */
export function wrap(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].join('\n');
}
