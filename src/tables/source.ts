/**
 * Where a table row comes from. `published`: read in the named standard or handbook (or a supplier's table of it).
 * `memory`: customary value without a published source at hand; figures resting on it are estimated.
 */
export interface RowSource {
  readonly kind: 'published' | 'memory';
  readonly text: string;
}

/** A property with where it is from. */
export interface Sourced {
  readonly value: number;
  readonly source: RowSource;
}

export const published = (text: string): RowSource => ({ kind: 'published', text });
export const fromMemory = (text: string): RowSource => ({ kind: 'memory', text: `${text} (from memory)` });
