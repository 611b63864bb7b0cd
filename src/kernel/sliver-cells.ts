/** Faces lower than this (mm) over their longest edge are slivers: wider ones the kernel does not get wrong. */
const sliver = 0.03;
const cell = 0.25;
/** Faces longer than this along an axis (mm) are not looked at: the cut along a master has none. */
const longest = 3;
/** Cells a face that is not too long can touch, and some. */
const most = (Math.ceil(longest / cell) + 2) ** 3;

/**
 * Calls `visit` with every face and every sliver its box touches, by the index of their first corner, some pairs more
 * than once. Plain loops over typed arrays: halves have a million faces, and a tenth of them are slivers.
 */
export function eachNearSliver(
  p: Float32Array,
  triangles: Uint32Array,
  visit: (face: number, sliver: number) => void,
): void {
  const { faces, boxes } = findSlivers(p, triangles);
  if (faces.length === 0) return;
  const mask = 2 ** Math.ceil(Math.log2(faces.length * 8)) - 1;
  const { heads, next, items } = byCell(boxes, mask);
  const box = new Float64Array(6);
  const slots = new Int32Array(most);
  for (let face = 0; face < triangles.length; face += 3) {
    if (!putBox(p, triangles, face, box, 0)) continue;
    const count = putSlots(box, 0, mask, slots);
    for (let k = 0; k < count; k++) {
      for (let entry = heads[slots[k]]; entry >= 0; entry = next[entry]) {
        const other = items[entry];
        if (faces[other] !== face && touch(box, boxes, other * 6)) visit(face, faces[other]);
      }
    }
  }
}

function findSlivers(p: Float32Array, triangles: Uint32Array) {
  const faces: number[] = [];
  const boxes: number[] = [];
  const box = new Float64Array(6);
  for (let face = 0; face < triangles.length; face += 3) {
    if (!isSliver(p, triangles, face) || !putBox(p, triangles, face, box, 0)) continue;
    faces.push(face);
    boxes.push(...box);
  }
  return { faces, boxes: Float64Array.from(boxes) };
}

/** Lists of slivers, one for each slot of a table cells are hashed to: two cells in one slot cost a look, no more. */
function byCell(boxes: Float64Array, mask: number) {
  const heads = new Int32Array(mask + 1).fill(-1);
  const next: number[] = [];
  const items: number[] = [];
  const slots = new Int32Array(most);
  for (let item = 0; item * 6 < boxes.length; item++) {
    const count = putSlots(boxes, item * 6, mask, slots);
    for (let k = 0; k < count; k++) {
      next.push(heads[slots[k]]);
      items.push(item);
      heads[slots[k]] = items.length - 1;
    }
  }
  return { heads, next, items };
}

function isSliver(p: Float32Array, triangles: Uint32Array, face: number): boolean {
  const [a, b, c] = [triangles[face] * 3, triangles[face + 1] * 3, triangles[face + 2] * 3];
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const third = (ux - vx) ** 2 + (uy - vy) ** 2 + (uz - vz) ** 2;
  const longest2 = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz, third);
  // Height over the longest edge = |normal| / longest.
  return x * x + y * y + z * z < sliver * sliver * longest2;
}

/** Puts least and greatest x, y, z of a face into `boxes`; false for a face that is too long. */
function putBox(
  p: Float32Array,
  triangles: Uint32Array,
  face: number,
  boxes: Float64Array,
  at: number,
): boolean {
  for (let axis = 0; axis < 3; axis++) {
    const a = p[triangles[face] * 3 + axis];
    const b = p[triangles[face + 1] * 3 + axis];
    const c = p[triangles[face + 2] * 3 + axis];
    const least = Math.min(a, b, c);
    const greatest = Math.max(a, b, c);
    if (greatest - least > longest) return false;
    boxes[at + axis] = least;
    boxes[at + 3 + axis] = greatest;
  }
  return true;
}

/** Puts the slots of the cells a box touches into `slots` and says how many there are. */
function putSlots(boxes: Float64Array, at: number, mask: number, slots: Int32Array): number {
  let count = 0;
  for (let i = Math.floor(boxes[at] / cell); i <= boxes[at + 3] / cell; i++) {
    for (let j = Math.floor(boxes[at + 1] / cell); j <= boxes[at + 4] / cell; j++) {
      const row = Math.imul(i, 73856093) ^ Math.imul(j, 19349663);
      for (let k = Math.floor(boxes[at + 2] / cell); k <= boxes[at + 5] / cell; k++) {
        slots[count++] = (row ^ Math.imul(k, 83492791)) & mask;
      }
    }
  }
  return count;
}

const touch = (a: Float64Array, b: Float64Array, at: number): boolean =>
  a[0] <= b[at + 3] &&
  b[at] <= a[3] &&
  a[1] <= b[at + 4] &&
  b[at + 1] <= a[4] &&
  a[2] <= b[at + 5] &&
  b[at + 2] <= a[5];
