/**
 * Numbers different triples of integers as they come, by an open-addressed table that doubles when it is two thirds full: a
 * closed surface has six corners for each vertex, and a small table stays near the processor.
 */
export class PointTable {
  count = 0;
  private slots: Int32Array;
  private points: Int32Array;

  /** `expected` is a guess; there may be any number. */
  constructor(expected: number) {
    let size = 16;
    while (size < expected * 1.5) size *= 2;
    this.slots = new Int32Array(size).fill(-1);
    this.points = new Int32Array(size * 2);
  }

  numberOf(x: number, y: number, z: number): number {
    const { slots, points } = this;
    const mask = slots.length - 1;
    let slot = scatter(x, y, z) & mask;
    for (let known = slots[slot]; known >= 0; known = slots[slot]) {
      const at = known * 3;
      if (points[at] === x && points[at + 1] === y && points[at + 2] === z) return known;
      slot = (slot + 1) & mask;
    }
    const number = this.count++;
    slots[slot] = number;
    points[number * 3] = x;
    points[number * 3 + 1] = y;
    points[number * 3 + 2] = z;
    if (this.count * 3 + 3 > points.length) this.grow();
    return number;
  }

  private grow(): void {
    const size = this.slots.length * 2;
    const points = new Int32Array(size * 2);
    points.set(this.points);
    const slots = new Int32Array(size).fill(-1);
    for (let number = 0; number < this.count; number++) {
      const at = number * 3;
      let slot = scatter(points[at], points[at + 1], points[at + 2]) & (size - 1);
      while (slots[slot] >= 0) slot = (slot + 1) & (size - 1);
      slots[slot] = number;
    }
    [this.slots, this.points] = [slots, points];
  }
}

/** Spreads three integers over 32 bits (multiply and fold; only speed depends on how well). */
function scatter(x: number, y: number, z: number): number {
  let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca77) ^ Math.imul(z, 0xc2b2ae3d);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 13), 0x297a2d39);
  return h ^ (h >>> 16);
}
