/** Numbers by their cost, least first; of equal cost the lower number, so that a search always runs the same. */
export class MinHeap {
  private readonly items: (readonly [number, number])[] = [];

  push(cost: number, item: number): void {
    const { items } = this;
    let at = items.push([cost, item]) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!isBefore(items[at], items[parent])) break;
      [items[at], items[parent]] = [items[parent], items[at]];
      at = parent;
    }
  }

  pop(): number | undefined {
    const { items } = this;
    const [top] = items;
    const last = items.pop();
    if (!top || !last) return undefined;
    if (items.length > 0) items[0] = last;
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let least = at;
      if (left < items.length && isBefore(items[left], items[least])) least = left;
      if (right < items.length && isBefore(items[right], items[least])) least = right;
      if (least === at) return top[1];
      [items[at], items[least]] = [items[least], items[at]];
      at = least;
    }
  }
}

const isBefore = (one: readonly [number, number], other: readonly [number, number]): boolean =>
  one[0] < other[0] || (one[0] === other[0] && one[1] < other[1]);
