import { Unreadable } from '../exit.ts';

/** The second of five machines: `{ part: 2, of: 5 }`. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

/** Reads `2/5`. Throws Unreadable where it is no such thing. */
export function readShard(text: string): Shard {
  const [, part, of] = (/^(\d{1,5})\/(\d{1,5})$/.exec(text) ?? []).map(Number);
  if (!(part >= 1 && part <= of)) {
    throw new Unreadable(`--shard ${text}: write it like 2/5, from 1/5 to 5/5`);
  }
  return { part, of };
}

/** Every `of`th of a list, beginning with the `part`th. */
export const shareOf = <T>(list: readonly T[], { part, of }: Shard): T[] =>
  list.filter((_, i) => i % of === part - 1);
