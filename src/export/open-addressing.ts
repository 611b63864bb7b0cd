/** A power of two a third larger than `entries` or more. */
export function tableSize(entries: number): number {
  let size = 16;
  while (size < entries * 1.3) size *= 2;
  return size;
}

/** Spreads three integers over 32 bits (multiply and fold; only speed depends on how well). */
export function scatter(x: number, y: number, z: number): number {
  let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca77) ^ Math.imul(z, 0xc2b2ae3d);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 13), 0x297a2d39);
  return h ^ (h >>> 16);
}
