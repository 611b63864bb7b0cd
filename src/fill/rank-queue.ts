/** A queue of whole numbers below a bound, each in it once: a tree of bits, so that the least is found in a few steps. */
export class RankQueue {
  private readonly levels: Int32Array[] = [];

  constructor(bound: number) {
    let words = bound;
    do {
      words = Math.max(1, Math.ceil(words / 32));
      this.levels.push(new Int32Array(words));
    } while (words > 1);
  }

  add(value: number): void {
    let at = value;
    for (const level of this.levels) {
      const word = at >>> 5;
      const before = level[word];
      level[word] = before | (1 << (at & 31));
      if (before !== 0) return;
      at = word;
    }
  }

  remove(value: number): void {
    let at = value;
    for (const level of this.levels) {
      const word = at >>> 5;
      level[word] &= ~(1 << (at & 31));
      if (level[word] !== 0) return;
      at = word;
    }
  }

  /** The least, or -1 where there is none. */
  least(): number {
    const { levels } = this;
    let at = 0;
    for (let l = levels.length - 1; l >= 0; l--) {
      const word = levels[l][at];
      if (word === 0) return -1;
      at = at * 32 + 31 - Math.clz32(word & -word);
    }
    return at;
  }
}
