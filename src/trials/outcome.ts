/** What a casting came out as. All but `good` are faults; one casting may have several. */
export const outcomes = ['good', 'short', 'flash', 'porous', 'cold lap', 'torn mold'] as const;
export type Outcome = (typeof outcomes)[number];
export type Fault = Exclude<Outcome, 'good'>;

/** Faults that tell of metal that did not come, or of air that did not go. */
export const unfilled: readonly Fault[] = ['short', 'porous', 'cold lap'];
