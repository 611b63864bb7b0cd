/** The values of every code about the wall between `subject` and `other`. */
export const wall = { measured: 'mm', limit: 'mm', other: 'name' } as const;

/** What such a code says where the wall is too thin, and where nothing is left of it. */
export const wallSays = {
  thin: 'The wall between {subject} and {other} is {measured}, where {limit} is wanted.',
  meets: '{subject} and {other} run into each other.',
} as const;

/** What all codes share about a wall that is too thin, but for its limit in the plan. */
export const thinWall = {
  severity: 'warn',
  formula: 'true distance of the two surfaces',
  values: wall,
  says: { thin: wallSays.thin },
} as const;
