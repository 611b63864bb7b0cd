/** Most values of one range: a slip in the step must not ask for a million molds. */
const mostInRange = 10_000;

/** A number as num / den in whole numbers. */
interface Fraction {
  readonly num: number;
  readonly den: number;
}

const number = String.raw`(-?(?:\d+[ -])?\d+\/\d+|-?\d+(?:\.\d+)?)`;
const unit = String.raw`\s*([^\d\s./-][^\d\s./]*|)`;
const decimal = String.raw`(-?\d+(?:\.\d+)?)`;
/** With `step` written out every number may be a fraction; with a stroke the last number before it may not. */
const written = new RegExp(`^${number}${unit}\\s*\\.\\.\\s*${number}${unit}\\s+step\\s+${number}${unit}$`);
const stroked = new RegExp(`^${number}${unit}\\s*\\.\\.\\s*${decimal}${unit}(?:/${number}${unit})?$`);

/**
 * The values of `150..300/25` or `1/2in..1in step 1/8in`, both ends included where the step meets them; without a step
 * it is 1. All three numbers are of one unit, which may stand on any of them. Inches in fractions give fractions.
 * Undefined where the text is no range.
 */
export function readRange(text: string): { values: string[] } | { fault: string } | undefined {
  if (!text.includes('..')) return undefined;
  const found = written.exec(text) ?? stroked.exec(text);
  if (!found) return { fault: `\`${text}\` is no range; write it like 150..300/25 or 1/2in..1in step 1/8in` };
  const [, first, firstUnit, last, lastUnit, by = '1', byUnit = ''] = found;
  const inFractions = [first, last, by].some((one) => one.includes('/'));
  if (
    first.includes('/') &&
    lastUnit === '' &&
    !text.includes('step') &&
    text.endsWith(`${last}/${by}${byUnit}`)
  ) {
    return { fault: `\`${text}\` can be read in two ways; write the step out, like 1/2in..3/4in step 1/8in` };
  }
  const units = [firstUnit, lastUnit, byUnit].filter((one) => one !== '');
  if (new Set(units).size > 1)
    return { fault: `\`${text}\` mixes the units ${[...new Set(units)].join(' and ')}` };
  const values = valuesOf(text, [first, last, by].map(readNumber), inFractions ? asFraction : asDecimal);
  return 'fault' in values ? values : { values: values.values.map((value) => `${value}${units[0] ?? ''}`) };
}

type Show = (value: Fraction) => string;

function valuesOf(
  text: string,
  [from, to, step]: readonly Fraction[],
  show: Show,
): { values: string[] } | { fault: string } {
  if (from.den * to.den * step.den === 0) return { fault: `\`${text}\` divides by 0` };
  if (!(step.num > 0)) return { fault: `the step of \`${text}\` must be more than 0` };
  const span = to.num / to.den - from.num / from.den;
  if (span < 0) return { fault: `\`${text}\` runs backward: the smaller number comes first` };
  // A hair more than the end keeps an end that rounding put just past it.
  const count = Math.floor((span * step.den) / step.num + 1e-9) + 1;
  if (count > mostInRange)
    return { fault: `\`${text}\` gives ${count} values; at most ${mostInRange} are made` };
  return {
    values: Array.from({ length: count }, (_, i) =>
      show({ num: from.num * step.den + i * step.num * from.den, den: from.den * step.den }),
    ),
  };
}

function readNumber(text: string): Fraction {
  const [, sign, whole = '0', num, den] = /^(-?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text) ?? [];
  if (num === undefined) {
    const places = text.split('.')[1]?.length ?? 0;
    return { num: Number(text.replace('.', '')), den: 10 ** places };
  }
  const over = Number(whole) * Number(den) + Number(num);
  return { num: sign === '-' ? -over : over, den: Number(den) };
}

const asDecimal: Show = ({ num, den }) => String(Number((num / den).toFixed(9)));

/** Such as `5/8` or `1 1/4`. */
const asFraction: Show = ({ num, den }) => {
  const [size, sign] = [Math.abs(num), num < 0 ? '-' : ''];
  const whole = Math.floor(size / den);
  const rest = size - whole * den;
  if (rest === 0) return `${sign}${whole}`;
  const by = common(rest, den);
  return `${sign}${whole === 0 ? '' : `${whole} `}${rest / by}/${den / by}`;
};

/** Greatest common divisor (Euclid). */
const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));
