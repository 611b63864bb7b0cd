/** The fields of the plan that are left out, and the end of a sentence on what is not checked for that. */
export const leftOut = { missing: 'names' } as const;
export const notSaid = 'not checked: the plan does not say {missing}.';
