import type { PlanValue } from './schema.ts';

/** Sections that are understood and kept, but that nothing is computed from yet. Take one out once something is. */
export const notUsedYet: readonly (keyof PlanValue)[] = [];
