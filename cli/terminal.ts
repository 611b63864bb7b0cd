import { createInterface } from 'node:readline';
import { stripVTControlCharacters } from 'node:util';
import pc from 'picocolors';
import type { Severity } from '../src/findings/index.ts';

/** Where a command writes: results on `out`, progress and faults on `err`. Tests pass their own. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** Widest line of a report, in characters. */
  readonly width: number;
  /** What a progress bar can be drawn on; not there where nobody watches. */
  readonly bar?: NodeJS.WritableStream;
  /** Opens what a person answers questions on. */
  openAsk?(): Asking;
}

/** Asks one question; undefined where nobody answers any more. */
export type Ask = (question: string) => Promise<string | undefined>;

interface Asking {
  readonly ask: Ask;
  close(): void;
}

/** Width of a report that goes to a file or another program. */
const pageWidth = 100;

/** Narrower a table does not hold its numbers; wider the eye does not find back to the next line. */
const [narrowest, widest] = [72, 140];

/** Width of lines on a stream: what its terminal has, within what can be read. */
export const widthOf = ({ columns }: Pick<Partial<NodeJS.WriteStream>, 'columns'>): number =>
  columns ? Math.min(widest, Math.max(narrowest, columns)) : pageWidth;

// A reader such as `head` may close the pipe early; that is its right and no fault of ours.
const quietOnClosedPipe = (stream: NodeJS.WriteStream): NodeJS.WriteStream =>
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });

/** Colors go to a terminal only, and not there where NO_COLOR asks for none; FORCE_COLOR sends them anywhere. */
function writerTo(stream: NodeJS.WriteStream): (text: string) => void {
  quietOnClosedPipe(stream);
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
  const colored = !NO_COLOR && (Boolean(FORCE_COLOR) || (stream.isTTY === true && TERM !== 'dumb'));
  return (text) => void stream.write(`${colored ? text : plain(text)}\n`);
}

/** The real terminal; made when the program starts. */
export function processTerminal(): Terminal {
  return {
    out: writerTo(process.stdout),
    err: writerTo(process.stderr),
    width: widthOf(process.stdout),
    ...(process.stderr.isTTY && { bar: process.stderr }),
    openAsk: askOnInput,
  };
}

/** Questions on the error stream, so that results can go elsewhere; answers from the input, a terminal or not. */
function askOnInput(): Asking {
  const lines = createInterface({ input: process.stdin, terminal: false });
  const answers = lines[Symbol.asyncIterator]();
  return {
    ask: async (question) => {
      process.stderr.write(question);
      const { value, done } = await answers.next();
      return done ? undefined : value.trim();
    },
    close: () => lines.close(),
  };
}

/** Text without color and other control sequences. */
export const plain = (text: string): string => stripVTControlCharacters(text);

// Whether color is shown is for the terminal to decide, not for the text.
const colors = pc.createColors(true);

/** The severity as a word; color only repeats it. */
export function severityMark(severity: Severity): string {
  const word = severity.padEnd(4);
  if (severity === 'stop') return colors.red(word);
  return severity === 'warn' ? colors.yellow(word) : colors.dim(word);
}

const verdictColors = {
  yes: colors.green,
  no: colors.red,
  doubtful: colors.yellow,
  'not checked': colors.dim,
};

/** The verdict as its word; color only repeats it. */
export const verdictMark = (verdict: keyof typeof verdictColors): string => verdictColors[verdict](verdict);

export const strong = (text: string): string => colors.bold(text);

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

/** Rows whose `column` is cut so far that the table is at most `width` wide, but not beyond what tells names apart. */
export function fitColumn(rows: readonly (readonly string[])[], column: number, width: number): string[][] {
  const least = 8;
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  const others = widths.reduce((sum, one, i) => (i === column ? sum : sum + one + 2), 0);
  const room = Math.max(least, width - others);
  return rows.map((row) => row.map((cell, i) => (i === column ? shorten(cell, room) : cell)));
}

/** Text cut in its middle to at most `width` characters: the ends of names tell them apart. */
export function shorten(text: string, width: number): string {
  const letters = [...text];
  if (letters.length <= width) return text;
  const head = Math.ceil((width - 2) / 2);
  return `${letters.slice(0, head).join('')}..${letters.slice(letters.length - (width - 2 - head)).join('')}`;
}

/** Words of a text; a number and its unit are one. */
const wordsOf = (text: string): string[] =>
  text
    .replaceAll(
      /(?<=[\d.]) (?=(?:[mc]?m[23]?|in[23]?|g|kg|k?N|[kM]?Pa|C|F|%|oz|lbf?|psi|rpm|deg|min|times)\b|%)/g,
      '\u00a0',
    )
    .split(' ')
    .map((word) => word.replaceAll('\u00a0', ' '));

/** Breaks text at spaces to lines of at most `width`: the first indented by `indent`, the others by `hang`. */
export function wrap(text: string, width: number, indent = '', hang = indent): string {
  const lines: string[] = [];
  let line = indent;
  let empty = true;
  for (const word of wordsOf(text)) {
    // Colors take no room.
    if (!empty && plain(line).length + 1 + plain(word).length > width) {
      lines.push(line);
      line = hang + word;
    } else {
      line += empty ? word : ` ${word}`;
    }
    empty = false;
  }
  return [...lines, line].join('\n');
}
