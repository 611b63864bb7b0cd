const bits = 11;
const buckets = 1 << bits;

/** Numbers of all keys in ascending order, equal ones as they stood in `before` (or by number): sorting by digits. */
export function sortedBy(keys: Uint32Array, before?: Int32Array): Int32Array {
  let order = before ?? Int32Array.from({ length: keys.length }, (_, i) => i);
  let most = 0;
  for (let i = 0; i < keys.length; i++) if (keys[i] > most) most = keys[i];
  for (let shift = 0; shift < 32 && most >>> shift > 0; shift += bits) order = byDigit(keys, order, shift);
  return order;
}

function byDigit(keys: Uint32Array, order: Int32Array, shift: number): Int32Array {
  const starts = new Int32Array(buckets + 1);
  for (let i = 0; i < keys.length; i++) starts[((keys[i] >>> shift) & (buckets - 1)) + 1]++;
  for (let b = 0; b < buckets; b++) starts[b + 1] += starts[b];
  const sorted = new Int32Array(order.length);
  for (let i = 0; i < order.length; i++) {
    const one = order[i];
    sorted[starts[(keys[one] >>> shift) & (buckets - 1)]++] = one;
  }
  return sorted;
}

/** The place of each number in an order of all of them. */
export function ranksOf(order: Int32Array): Int32Array {
  const ranks = new Int32Array(order.length);
  for (let i = 0; i < order.length; i++) ranks[order[i]] = i;
  return ranks;
}
