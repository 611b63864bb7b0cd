import { type Finding, type FindingCode, finding } from '../findings/index.ts';

/** What a plan would have to say, and whether it does. */
export type Wanted = readonly (readonly [place: string, value: unknown])[];

/** The places in a plan that are left out, such as `can.depth`. */
export const leftOut = (wanted: Wanted): string[] =>
  wanted.filter(([, value]) => value === undefined).map(([place]) => place);

/** A note that something is not checked, and what to add to the plan for it. */
export function notChecked(
  code: FindingCode,
  subject: string,
  what: string,
  places: readonly string[],
): Finding {
  const list = places.map((place) => `\`${place}\``).join(', ');
  return finding(code, { subject, says: `${what} not checked: the plan does not say ${list}.` });
}
