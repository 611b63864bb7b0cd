/** What a plan would have to say, and whether it does. */
export type Wanted = readonly (readonly [place: string, value: unknown])[];

/** The places in a plan that are left out, such as `can.depth`. */
export const leftOut = (wanted: Wanted): string[] =>
  wanted.filter(([, value]) => value === undefined).map(([place]) => place);
