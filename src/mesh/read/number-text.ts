/** Powers of ten that are exact as doubles: a whole number below 2^53 times or over one of them is rounded once. */
const tens = [
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
  1e20, 1e21, 1e22,
];
/** Digits that always fit below 2^53. */
const exactDigits = 15;
/** No number is written with more characters than this. */
const longest = 400;

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)([ed][+-]?\d+)?$/i;
/** How C, its Microsoft kin and others write what is not a number. */
const notFinite = /^([+-]?)(nan(\(.*\))?|inf(inity)?|1\.#(inf|ind|qnan|snan)\d*)$/i;

/**
 * The number written in `bytes` from `start` to `end` (ASCII), correctly rounded; NaN or Infinity where it says so;
 * undefined where it is no number. A Fortran exponent (`1D3`) is taken.
 */
export function numberIn(bytes: Uint8Array, start: number, end: number): number | undefined {
  let at = start;
  const negative = bytes[at] === 45;
  if (negative || bytes[at] === 43) at++;
  let digits = 0;
  let seen = 0;
  let whole = 0;
  let point = -1;
  for (; at < end; at++) {
    const digit = bytes[at] - 48;
    if (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      seen++;
      // Leading zeros need no room.
      if (whole > 0) digits++;
    } else if (bytes[at] === 46 && point < 0) point = at;
    else break;
  }
  let power = point < 0 ? 0 : point + 1 - at;
  if (seen === 0 || digits > exactDigits) return slowly(bytes, start, end);
  if (at < end) {
    const exponent = exponentIn(bytes, at, end);
    if (exponent === undefined) return slowly(bytes, start, end);
    power += exponent;
  }
  if (power < -22 || power > 22) return slowly(bytes, start, end);
  const value = power < 0 ? whole / tens[-power] : whole * tens[power];
  return negative ? -value : value;
}

function exponentIn(bytes: Uint8Array, start: number, end: number): number | undefined {
  let at = start;
  if ((bytes[at] | 32) !== 101) return undefined;
  at++;
  const negative = bytes[at] === 45;
  if (negative || bytes[at] === 43) at++;
  if (at >= end || end - at > 4) return undefined;
  let exponent = 0;
  for (; at < end; at++) {
    const digit = bytes[at] - 48;
    if (digit < 0 || digit > 9) return undefined;
    exponent = exponent * 10 + digit;
  }
  return negative ? -exponent : exponent;
}

function slowly(bytes: Uint8Array, start: number, end: number): number | undefined {
  if (end - start > longest) return undefined;
  let text = '';
  for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at]);
  if (decimal.test(text)) return Number(text.replace(/d/i, 'e'));
  const named = notFinite.exec(text);
  if (!named) return undefined;
  if (!/inf/i.test(named[2])) return Number.NaN;
  return named[1] === '-' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}

/** The whole number written in `bytes` from `start` to `end`, with its sign; undefined where it is none or past 2^53. */
export function wholeIn(bytes: Uint8Array, start: number, end: number): number | undefined {
  let at = start;
  const negative = bytes[at] === 45;
  if (negative || bytes[at] === 43) at++;
  if (at >= end) return undefined;
  let whole = 0;
  for (; at < end; at++) {
    const digit = bytes[at] - 48;
    if (digit < 0 || digit > 9) return undefined;
    whole = whole * 10 + digit;
    if (whole > Number.MAX_SAFE_INTEGER) return undefined;
  }
  return negative ? -whole : whole;
}
