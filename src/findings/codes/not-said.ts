/** What all codes share that name the fields a plan leaves out; and the end of a sentence on what is not checked for that. */
export const notChecked = {
  severity: 'note',
  values: { missing: 'names' },
  remedy: 'Add what is named to the plan.',
} as const;
export const notSaid = 'not checked: the plan does not say {missing}.';
