import type { TextPlace } from '../../findings/index.ts';
import type { MeshFile } from './mesh-file.ts';
import { numberIn } from './number-text.ts';

const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const backslash = 92;

/** Longest piece of a file quoted in a message. */
const longestQuote = 40;

/**
 * Walks through a text of words and numbers, byte by byte, without making strings of it. A word is what stands
 * between blanks; `start` and `end` are those of the last word met. Lines end with LF, CR or both.
 */
export class TextCursor {
  position: number;
  start = 0;
  end = 0;
  private readonly bytes: Uint8Array;

  constructor(private readonly file: MeshFile) {
    this.bytes = file.bytes;
    // A byte order mark of UTF-8 is not part of the text.
    this.position = this.bytes[0] === 0xef && this.bytes[1] === 0xbb && this.bytes[2] === 0xbf ? 3 : 0;
  }

  /** Goes to the next word, over line ends; false at the end of the text. */
  next(): boolean {
    const { bytes } = this;
    let at = this.position;
    while (at < bytes.length && bytes[at] <= space) at++;
    return this.take(at);
  }

  /** Goes to the next word of this line (a backslash before the line's end carries it on); false at its end. */
  nextInLine(): boolean {
    const { bytes } = this;
    let at = this.position;
    for (;;) {
      const byte = bytes[at];
      if (byte === lineFeed || byte === carriageReturn) {
        this.position = at;
        this.start = at;
        this.end = at;
        return false;
      }
      const after = byte === backslash ? this.afterLineEnd(at + 1) : at;
      if (after > at + 1) at = after;
      else if (byte <= space) at++;
      else break;
    }
    return this.take(at);
  }

  private take(from: number): boolean {
    const { bytes } = this;
    let at = from;
    while (at < bytes.length && bytes[at] > space) at++;
    // The backslash of a line carried on may touch the word before it.
    if (at > from + 1 && bytes[at - 1] === backslash && this.afterLineEnd(at) > at) at--;
    this.start = from;
    this.end = at;
    this.position = at;
    return at > from;
  }

  private afterLineEnd(from: number): number {
    const { bytes } = this;
    let at = from;
    if (bytes[at] === carriageReturn) at++;
    if (bytes[at] === lineFeed) at++;
    return at;
  }

  /** Whether the last word begins a comment of the `#` kind. */
  startsComment(): boolean {
    return this.bytes[this.start] === 35;
  }

  /** To the end of this line and of those it is carried on to by a backslash. */
  skipStatement(): void {
    for (;;) {
      this.skipLine();
      const after = this.afterLineEnd(this.position);
      if (this.bytes[this.position - 1] !== backslash || after === this.position) return;
      this.position = after;
    }
  }

  /** To the end of this line, whatever stands there. */
  skipLine(): void {
    const { bytes } = this;
    let at = this.position;
    while (at < bytes.length && bytes[at] !== lineFeed && bytes[at] !== carriageReturn) at++;
    this.position = at;
  }

  /** Whether the last word is this one, in upper or lower case. `word` is lower case ASCII. */
  is(word: string): boolean {
    const { bytes, start } = this;
    if (this.end - start !== word.length) return false;
    for (let i = 0; i < word.length; i++) {
      if ((bytes[start + i] | space) !== word.charCodeAt(i)) return false;
    }
    return true;
  }

  /** The last word as a number of a statement; what is none ends the reading. */
  number(statement: 'vertex' | 'point'): number {
    const value = numberIn(this.bytes, this.start, this.end);
    if (value !== undefined) return value;
    const text = this.quote();
    const at = this.textPlace();
    if (/^[+-]?\d*,\d+/.test(text)) this.file.stop('mesh.decimal-comma', { text }, at);
    if (text === '') this.file.stop('mesh.unreadable', { which: 'numbers-few', statement }, at);
    return this.file.stop('mesh.unreadable', { which: 'number', text, statement }, at);
  }

  /** The last word for a message, shortened. */
  quote(): string {
    const text = new TextDecoder().decode(
      this.bytes.subarray(this.start, Math.min(this.end, this.start + 160)),
    );
    // Control characters and lone surrogates would spoil a terminal.
    const shown = text.replace(/\p{C}/gu, '\ufffd');
    return shown.length > longestQuote ? `${shown.slice(0, longestQuote)}...` : shown;
  }

  /** Line and column of a byte, both from 1; the last word's by default. Slow: for messages only. */
  textPlace(offset: number = this.start): TextPlace {
    const { bytes } = this;
    let line = 1;
    let lineStart = 0;
    for (let at = 0; at < offset; at++) {
      if (bytes[at] === lineFeed || (bytes[at] === carriageReturn && bytes[at + 1] !== lineFeed)) {
        line++;
        lineStart = at + 1;
      }
    }
    const from = Math.max(lineStart, offset - 100_000);
    const before = new TextDecoder().decode(bytes.subarray(from, offset));
    return { file: this.file.name, line, column: from - lineStart + before.length + 1 };
  }
}
