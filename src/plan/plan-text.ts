import { type CodeValues, type Finding, finding, type TextPlace } from '../findings/index.ts';

/**
 * Largest plan read, in bytes: some five thousand lines, ten times what a full disc needs. Reading time grows in step
 * with the size, and hostile text of this size still ends within seconds.
 */
const largestPlan = 250_000;

/** Text of a plan file (a byte order mark taken off, lone CR line ends made LF), or the one finding why there is none. */
export function planText(source: string | Uint8Array, file: string): { text: string } | { fault: Finding } {
  const size = source.length;
  if (size > largestPlan) return tooLarge(size, file);
  if (typeof source === 'string') return { text: plainLineEnds(source.replace(/^\ufeff/, '')) };
  if (looksUtf16(source)) {
    return notUtf8({ which: 'utf16' }, { file, line: 1, column: 1 });
  }
  try {
    // The decoder takes off a UTF-8 byte order mark by itself.
    return { text: plainLineEnds(new TextDecoder('utf-8', { fatal: true }).decode(source)) };
  } catch {
    const { at, byte } = firstBadByte(source, file);
    return notUtf8({ which: 'byte', byte }, at);
  }
}

// One character for one, so that line and column stay those of the file.
const plainLineEnds = (text: string): string => text.replace(/\r(?!\n)/g, '\n');

/** A byte order mark of UTF-16, or every other byte zero at the start as in UTF-16 without one. */
function looksUtf16(bytes: Uint8Array): boolean {
  if (bytes.length < 2) return false;
  const mark = (bytes[0] << 8) | bytes[1];
  if (mark === 0xfffe || mark === 0xfeff) return true;
  const start = bytes.subarray(0, 64);
  const zeros = [0, 1].map((odd) => start.filter((byte, i) => i % 2 === odd && byte === 0).length);
  return Math.max(...zeros) >= start.length / 4;
}

function firstBadByte(bytes: Uint8Array, file: string): { at: TextPlace; byte: string } {
  // The longest prefix that decodes as a beginning of UTF-8 text; a stream may end within a character.
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodes(bytes.subarray(0, middle))) good = middle;
    else bad = middle;
  }
  const start = startOfCharacter(bytes, good);
  const before = new TextDecoder().decode(bytes.subarray(0, start)).split('\n');
  const byte = `0x${(bytes[start] ?? 0).toString(16).padStart(2, '0').toUpperCase()}`;
  return { at: { file, line: before.length, column: [...(before.at(-1) ?? '')].length + 1 }, byte };
}

/**
 * Where the character that `end` lies within begins, `end` itself where none is left unfinished there: the byte at
 * fault is the one that opens it. A lead byte's upper bits tell its length, bytes 10xxxxxx carry it on (RFC 3629).
 */
function startOfCharacter(bytes: Uint8Array, end: number): number {
  let lead = end - 1;
  while (lead > end - 4 && (bytes[lead] & 0xc0) === 0x80) lead--;
  const first = bytes[lead] ?? 0;
  const length = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : first >= 0xc0 ? 2 : 1;
  return lead >= 0 && lead + length > end ? lead : end;
}

function decodes(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

const tooLarge = (size: number, file: string): { fault: Finding } => ({
  fault: finding('plan.too-large', {
    subject: 'plan',
    values: { measured: size, limit: largestPlan },
    at: { file, line: 1, column: 1 },
  }),
});

const notUtf8 = (values: CodeValues<'plan.not-utf8'>, at: TextPlace): { fault: Finding } => ({
  fault: finding('plan.not-utf8', { subject: 'plan', values, at }),
});
