/** What is noted of a pour, in the order in which the record on paper has its columns and the log its fields. */
export const columns = [
  { field: 'pour', heading: 'pour' },
  { field: 'date', heading: 'date' },
  { field: 'metal', heading: 'metal temp.' },
  { field: 'mold', heading: 'mold temp.' },
  { field: 'speed', heading: 'speed' },
  { field: 'shot', heading: 'shot' },
  { field: 'talc', heading: 'talc' },
  { field: 'cavities', heading: 'good / short / other' },
  { field: 'changed', heading: 'changed since the pour before' },
] as const;
