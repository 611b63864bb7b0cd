import { diff3Merge, diffIndices } from 'node-diff3';

/** Two edits of one text put together, or how many places both changed. */
export type Merged = { readonly text: string } | { readonly clashes: number };

const lines = (text: string): string[] => text.split('\n');

/** Line by line: what only one of them changed is taken from it. Where both changed the same place, no text comes. */
export function mergeTexts(base: string, mine: string, theirs: string): Merged {
  const regions = diff3Merge(lines(mine), lines(base), lines(theirs), { excludeFalseConflicts: true });
  const clashes = regions.filter(({ conflict }) => conflict).length;
  if (clashes > 0) return { clashes };
  return { text: regions.flatMap(({ ok }) => ok ?? []).join('\n') };
}

/** Numbers of the lines of `text`, from 0, that are not as in `base`. */
export function changedLines(base: string, text: string): ReadonlySet<number> {
  const changed = new Set<number>();
  for (const { buffer2 } of diffIndices(lines(base), lines(text))) {
    for (let i = 0; i < buffer2[1]; i++) changed.add(buffer2[0] + i);
  }
  return changed;
}
