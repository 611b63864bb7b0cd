import type { Check } from '../mold/index.ts';

/** Every check, in the order the report shows them. */
export const checks: readonly Check[] = [];
