/**
 * Where a number comes from. `published`: read in the named standard, handbook or paper, or in a table that repeats it,
 * which is then named too. `computed`: our own recomputation from published numbers. `choice`: a margin or limit of our
 * own, or common practice, that nobody could look up. `memory`: customary value without a source at hand; figures
 * resting on it are estimated, and nothing that protects somebody may rest on it.
 */
export interface RowSource {
  readonly kind: 'published' | 'computed' | 'choice' | 'memory';
  readonly text: string;
}

/** A property with where it is from. */
export interface Sourced {
  readonly value: number;
  readonly source: RowSource;
}

export const published = (text: string): RowSource => ({ kind: 'published', text });
export const computed = (text: string): RowSource => ({
  kind: 'computed',
  text: `${text} (own recomputation)`,
});
export const ourChoice = (text: string): RowSource => ({
  kind: 'choice',
  text: `${text} (our own choice; no published source)`,
});
export const fromMemory = (text: string): RowSource => ({ kind: 'memory', text: `${text} (from memory)` });
