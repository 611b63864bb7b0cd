import { type Cells, sides, wall } from '../../src/fill/cells.ts';

/** Sets that are joined, each known by its first. */
class Sets {
  private readonly parent: number[];

  constructor(count: number) {
    this.parent = Array.from({ length: count }, (_, i) => i);
  }

  of(i: number): number {
    while (this.parent[i] !== i) i = this.parent[i];
    return i;
  }

  join(a: number, b: number): void {
    this.parent[this.of(a)] = this.of(b);
  }
}

const near = ({ beside }: Cells, c: number): number[] =>
  [...beside.subarray(sides * c, sides * c + sides)].filter((n) => n !== wall);

/**
 * The filling drop by drop, without a queue: each drop starts at the source, runs down the steepest way, crosses pools
 * (joined sets of filled cells) to the lowest cell beside them, and fills the cell it cannot leave.
 */
export function dropByDrop(cells: Cells, rank: Int32Array, source: number): number[] {
  const filled = new Set<number>();
  const pools = new Sets(cells.count);
  const sequence: number[] = [];
  const lowestOf = (list: readonly number[]): number | undefined =>
    list.reduce<number | undefined>(
      (low, n) => (low === undefined || rank[n] < rank[low] ? n : low),
      undefined,
    );
  const shore = (touching: readonly number[]): number | undefined => {
    const roots = new Set(touching.map((n) => pools.of(n)));
    const pool = [...filled].filter((n) => roots.has(pools.of(n)));
    return lowestOf(pool.flatMap((n) => near(cells, n)).filter((n) => !filled.has(n)));
  };
  for (;;) {
    const start = filled.has(source) ? shore([source]) : source;
    if (start === undefined) return sequence;
    let c = start;
    for (;;) {
      const at = c;
      // The steepest way first; one into a pool that stands as high as this cell is none.
      const ways = near(cells, at)
        .filter((n) => rank[n] < rank[at])
        .sort((a, b) => rank[a] - rank[b])
        .map((n) => (filled.has(n) ? shore([n]) : n));
      const next: number | undefined = ways.find((n) => n !== undefined && rank[n] < rank[at]);
      if (next === undefined) break;
      c = next;
    }
    filled.add(c);
    sequence.push(c);
    for (const n of near(cells, c)) if (filled.has(n)) pools.join(n, c);
  }
}

/** For each cell the seal at which its set first holds an escape when cells are opened in reverse, the last seal first. */
export function openedInReverse(cells: Cells, bySeal: Int32Array, escapes: readonly number[]): number[] {
  const out = new Array<number>(cells.count).fill(-1);
  const sets = new Sets(cells.count);
  const open = new Set<number>();
  for (let seal = cells.count - 1; seal >= 0; seal--) {
    const c = bySeal[seal];
    open.add(c);
    for (const n of near(cells, c)) if (open.has(n)) sets.join(n, c);
    const free = new Set(escapes.filter((e) => open.has(e)).map((e) => sets.of(e)));
    for (const n of open) if (out[n] < 0 && free.has(sets.of(n))) out[n] = seal;
  }
  return out;
}
