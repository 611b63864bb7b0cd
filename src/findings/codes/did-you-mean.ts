/** After a remedy: what was written without a unit, as it would do no harm in inches. Wants the value `meant?`, names. */
export const didYouMean = '{meant, select, none {} other { Did you mean {meant}?}}' as const;
