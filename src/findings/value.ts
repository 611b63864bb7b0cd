/** Units that values in findings and figures have inside the program; shells show them in the person's system. */
export const units = [
  'mm',
  'mm2',
  'mm3',
  'deg',
  'g',
  'g.mm',
  'kg',
  'N',
  'N.m',
  'Pa',
  'C',
  'K',
  's',
  'rpm',
  'm/s',
  'bytes',
  'count',
  'ratio',
  'times',
  'money',
] as const;
export type Unit = (typeof units)[number];

/** The system a person reads: millimeters, grams and Celsius first, or inches, ounces and Fahrenheit. */
export type UnitSystem = 'metric' | 'inch';

export interface Measured {
  readonly value: number;
  readonly unit: Unit;
}

/**
 * What kind of value a finding carries under a name: a number in a unit; a `quantity` whose unit comes with it; a
 * `point` in mm; a `name` (an id, a file, words the person wrote) or several `names`; or one of the words listed, which
 * a sentence chooses by.
 */
export type ValueKind = Unit | 'quantity' | 'point' | 'name' | 'names' | readonly string[];

/** The values a code gives, by name; one whose name ends in `?` may be missing, and a sentence then finds `none`. */
export type ValueKinds = Readonly<Record<string, ValueKind>>;

type ValueOf<K extends ValueKind> = K extends Unit
  ? number
  : K extends 'quantity'
    ? Measured
    : K extends 'point'
      ? readonly number[]
      : K extends 'name'
        ? string
        : K extends readonly (infer Word)[]
          ? Word
          : readonly string[];

/** The values themselves, for the kinds a code declares. */
export type ValuesOf<V extends ValueKinds> = {
  readonly [K in keyof V as K extends `${string}?` ? never : K]: ValueOf<V[K]>;
} & { readonly [K in keyof V as K extends `${infer Name}?` ? Name : never]?: ValueOf<V[K]> | undefined };

/** Any value a finding may carry. */
export type FindingValue = number | string | Measured | readonly number[] | readonly string[];

/** The kind declared for the value of this name, and whether it may be missing. */
export function kindOf(kinds: ValueKinds, name: string): { kind: ValueKind; optional: boolean } | undefined {
  if (name in kinds) return { kind: kinds[name], optional: false };
  const optional = `${name}?`;
  return optional in kinds ? { kind: kinds[optional], optional: true } : undefined;
}
