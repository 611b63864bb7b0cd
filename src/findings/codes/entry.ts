import type { Severity } from '../severity.ts';
import type { Arguments } from '../template.ts';
import type { ValueKinds } from '../value.ts';

/**
 * ICU messages (Unicode Locale Data Markup Language): `{name}` stands for a value in the person's units, `{n, plural,
 * one {# hole} other {# holes}}` and `{word, select, ...}` choose. `{subject}` is the id it is about. A table of
 * messages is chosen from by the value `which`.
 */
export type Template = string | Readonly<Record<string, string>>;

/** What is known of a code beforehand. `safety` stops cannot be lowered by a plan. */
export interface CodeEntry {
  readonly severity: Severity;
  /** What it means, in one or two plain sentences. */
  readonly means: string;
  /** The values it gives, by name. `measured` and `limit` are what was found and what it is held to. */
  readonly values?: ValueKinds;
  /** What is wrong, in one sentence with the numbers. */
  readonly says: Template;
  /** What to do about it, in one sentence. */
  readonly remedy: Template;
  readonly safety?: true;
  /** The formula or rule it is judged by, where there is one. */
  readonly formula?: string;
  /** Where formula or limit come from: standard, handbook, `from memory`, `common practice, no published source`. */
  readonly source?: string;
}

type Messages<T extends Template> = T extends string ? T : T[keyof T];

/** Names a template may use: the subject, the values, and `which` where a table is chosen from. */
type Given<E extends CodeEntry> =
  | 'subject'
  | (E extends { readonly values: infer V }
      ? keyof V extends infer K
        ? K extends `${infer Name}?`
          ? Name
          : K
        : never
      : never);

type Unknown<E extends CodeEntry> = Exclude<
  Arguments<Messages<E['says']> & string> | Arguments<Messages<E['remedy']> & string>,
  Given<E>
>;

/** Where both are tables, they have the same keys. */
type Uneven<E extends CodeEntry> = E extends {
  readonly says: infer S extends object;
  readonly remedy: infer R extends object;
}
  ? Exclude<keyof S, keyof R> | Exclude<keyof R, keyof S>
  : never;

type Checked<T extends Record<string, CodeEntry>> = {
  [K in keyof T]: [Unknown<T[K]> | Uneven<T[K]>] extends [never]
    ? unknown
    : { 'names values it does not give': Unknown<T[K]>; 'stands in one table only': Uneven<T[K]> };
};

/** A table of codes; a template that names a value its code does not give is a type error. */
export const codes = <const T extends Record<string, CodeEntry>>(table: T & Checked<T>): T => table;
