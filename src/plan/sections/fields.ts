import { z } from 'zod';
import {
  type About,
  type CodeValues,
  type Finding,
  type FindingCode,
  findingWith,
} from '../../findings/index.ts';
import { toDegrees } from '../../geometry/index.ts';
import { readQuantity, whatIsAccepted } from '../quantity.ts';
import { type KindName, quantityKinds } from '../unit-table.ts';

/** Bounds of a quantity in internal units; `over` and `under` exclude the bound itself. */
export interface Bounds {
  readonly over?: number;
  readonly from?: number;
  readonly to?: number;
  readonly under?: number;
}

/** What a check of ours adds to a zod issue, so that it becomes the finding it is. */
export interface IssueParams {
  readonly code: FindingCode;
  find(about: About): Finding;
}

type Context = z.core.$RefinementCtx;

/** Adds an issue that becomes a finding of the given code with the given values. */
export function complain<C extends FindingCode>(
  context: Context,
  code: C,
  values: CodeValues<C>,
  path: readonly (string | number)[] = [],
): void {
  const params: IssueParams = { code, find: (about) => findingWith(code, values, about) };
  context.issues.push({ code: 'custom', message: code, path: [...path], params, input: context.value });
}

/** Reads one quantity inside a transform; complains and gives `undefined` where it cannot be read or is out of bounds. */
export function readInto(
  context: Context,
  written: number | string,
  kind: KindName,
  bounds: Bounds,
  path: readonly (string | number)[] = [],
): number | undefined {
  const read = readQuantity(written, kind);
  if ('fault' in read) {
    complain(context, read.fault.code, read.fault.values, path);
    return undefined;
  }
  if (within(read.value, bounds)) return read.value;
  const allowed = sayBounds(bounds, kind);
  complain(context, 'plan.out-of-range', { which: 'quantity', given: String(written), allowed }, path);
  return undefined;
}

/** A field that holds a quantity: a bare number or a text with a unit; its value is in internal units. */
export function quantity(kind: KindName, description: string, bounds: Bounds) {
  return z
    .union([z.number(), z.string()])
    .transform((written, context) => readInto(context, written, kind, bounds) ?? z.NEVER)
    .describe(`${description} ${accepts(kind)} Range: ${sayBounds(bounds, kind)}.`);
}

export const accepts = (kind: KindName): string => `Accepted: ${whatIsAccepted(kind)}.`;

export const length = (description: string, bounds: Bounds) => quantity('length', description, bounds);

/** An angle of any size up to a hundred turns either way, in rad; or with its own bounds, in rad. */
export const angle = (description: string, bounds: Bounds = { from: -200 * Math.PI, to: 200 * Math.PI }) =>
  quantity('angle', description, bounds);

export const share = (description: string, bounds: Bounds) => quantity('share', description, bounds);

/** A length, or a share of the disc's diameter, by which it follows when the diameter changes. */
export type Size = number | { readonly share: number };

/** A size written as a length or as a share of the disc's diameter such as `14 %`, at most half of it. */
export const size = (description: string, bounds: Bounds) =>
  z
    .union([z.number(), z.string()])
    .transform((written, context): Size => {
      if (!isShare(written)) return readInto(context, written, 'length', bounds) ?? z.NEVER;
      return { share: readInto(context, written, 'share', { over: 0, to: 0.5 }) ?? z.NEVER };
    })
    .describe(
      `${description} A length, or a share of the disc diameter such as \`14 %\` (at most 50 %). ${accepts('length')} Range: ${sayBounds(bounds, 'length')}.`,
    );

/** Whether a number is written as a share, such as `60 %`. */
export const isShare = (written: number | string): boolean =>
  typeof written === 'string' && /%|percent/i.test(written);

/** A whole number. */
export const count = (description: string, from: number, to: number) =>
  z.int().min(from).max(to).describe(`${description} A whole number from ${from} to ${to}.`);

/** A short text on one line. */
export const line = (description: string, longest = 120) =>
  z
    .string()
    .trim()
    .min(1)
    .max(longest)
    .superRefine((text, context) => {
      // They would break reports, file names and engraving.
      if (!/\p{Cc}/u.test(text)) return;
      complain(context, 'plan.wrong-kind', { which: 'one line' });
    })
    .describe(description);

/** One of a few words. */
export const word = <const W extends readonly string[]>(description: string, words: W) =>
  z.enum(words).describe(description);

/** One of a few words, in capitals or not. */
export const wordInAnyCase = <const W extends readonly string[]>(description: string, words: W) =>
  z.preprocess(
    (written) => {
      const same = (one: string): boolean =>
        typeof written === 'string' && one.toLowerCase() === written.toLowerCase();
      return words.find(same) ?? written;
    },
    word(description, words),
  );

/** Letters of any script, digits and dashes, beginning with a letter or digit. */
export const idPattern = /^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]{0,59}$/u;

/** A name the user gives. Composed and decomposed spellings of the same letters are one name. */
export const id = (description: string) =>
  z
    .string()
    .transform((text, context) => {
      const name = text.normalize('NFC');
      if (idPattern.test(name)) return name;
      complain(context, 'plan.bad-id', badId(text));
      return z.NEVER;
    })
    .describe(`${description} Letters, digits and dashes, at most 60.`);

export const badId = (text: string) => ({ which: 'letters', name: text.slice(0, 60) }) as const;

type Names<T> = { readonly [K in keyof T]?: string };

export type Renamed<T, M> = {
  [K in keyof T as K extends keyof M ? (M[K] extends string ? M[K] : K) : K]: T[K];
};

/** The value with some keys renamed, so that inside the program a name carries its unit. */
export function renamed<T extends object, const M extends Names<T>>(value: T, names: M): Renamed<T, M> {
  const entries = Object.entries(value).map(([key, held]) => [names[key as keyof T] ?? key, held]);
  return Object.fromEntries(entries) as Renamed<T, M>;
}

function within(value: number, { over, from, to, under }: Bounds): boolean {
  if (!Number.isFinite(value)) return false;
  if (over !== undefined && value <= over) return false;
  if (from !== undefined && value < from) return false;
  if (to !== undefined && value > to) return false;
  return under === undefined || value < under;
}

/** The bounds in words, in the unit a bare number of the kind has. */
function sayBounds({ over, from, to, under }: Bounds, kind: KindName): string {
  const show = (value: number): string => showInternal(value, kind);
  const low =
    over !== undefined ? `more than ${show(over)}` : from !== undefined ? `at least ${show(from)}` : '';
  const high =
    to !== undefined ? `at most ${show(to)}` : under !== undefined ? `less than ${show(under)}` : '';
  return [low, high].filter((part) => part !== '').join(' and ') || 'any';
}

function showInternal(value: number, kind: KindName): string {
  const tidy = (number: number): string => String(Number(number.toPrecision(6)));
  if (kind === 'angle') return `${tidy(toDegrees(value))} deg`;
  if (kind === 'share') return `${tidy(value * 100)} %`;
  if (kind === 'time') return `${tidy(value / 60)} min`;
  if (kind === 'pressure') return `${tidy(value / 1e6)} MPa`;
  return `${tidy(value)} ${quantityKinds[kind].internal}`;
}
