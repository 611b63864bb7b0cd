/** What is known of a code beforehand. `safety` stops cannot be lowered by a plan. */
export interface CodeEntry {
  readonly severity: 'stop' | 'warn' | 'note';
  /** What it means, in one or two plain sentences. */
  readonly means: string;
  /** What to do about it, in one sentence. */
  readonly remedy: string;
  readonly safety?: true;
  /** The formula or rule it is judged by, where there is one. */
  readonly formula?: string;
  /** Where formula or limit come from: standard, handbook, `from memory`, `common practice, no published source`. */
  readonly source?: string;
}

/** Keeps the literal keys of a table of codes while checking its rows. */
export const codes = <K extends string>(table: Record<K, CodeEntry>): Record<K, CodeEntry> => table;
