import type { TriangleMesh, Vec3 } from '../../src/geometry/index.ts';
import { closedAfterRounding, type Kernel } from '../../src/kernel/index.ts';
import type { Shape } from './shapes.ts';

/** Room kept free round the model, in cells, so that its surface never meets the end of the grid. */
const margin = 3;

/**
 * Modeling clay: a block of space in cells of `cell` mm that holds a signed distance (negative inside). Forms are
 * pressed on or carved out one after the other, each with a rounding where it meets what is there already.
 */
export class Clay {
  private readonly counts: Vec3;
  private readonly low: Vec3;
  private readonly field: Float32Array;
  private readonly layer: Float32Array;

  /** A block with room for everything between `min` and `max` (mm). */
  constructor(
    min: Vec3,
    max: Vec3,
    private readonly cell: number,
  ) {
    this.low = [min[0] - margin * cell, min[1] - margin * cell, min[2] - margin * cell];
    const count = (axis: 0 | 1 | 2): number =>
      Math.ceil((max[axis] + margin * cell - this.low[axis]) / cell) + 1;
    this.counts = [count(0), count(1), count(2)];
    this.field = new Float32Array(this.counts[0] * this.counts[1] * this.counts[2]).fill(far);
    this.layer = new Float32Array(this.field.length);
  }

  /** Presses the forms on, as one piece, with a fillet of about `blend` mm where they meet what is there. */
  add(forms: readonly Shape[], blend = 0): this {
    return this.merge(forms, blend, (here, form) => smoothLeast(here, form, blend));
  }

  /** Cuts the forms away, with an edge rounded by about `blend` mm. */
  carve(forms: readonly Shape[], blend = 0): this {
    return this.merge(forms, blend, (here, form) => -smoothLeast(-here, form, blend));
  }

  /** The surface as one closed solid standing on z = 0; throws KernelFault where there is none or several. */
  toMesh(kernel: Kernel, what: string): TriangleMesh {
    this.soften();
    const { low, counts, cell } = this;
    const high = counts.map((count, axis) => low[axis] + (count - 1) * cell) as unknown as Vec3;
    const mesh = kernel.scope((scope) =>
      scope.toMesh(scope.levelSet((at) => -this.at(at), low, high, cell, what)),
    );
    return closedAfterRounding(standing(mesh));
  }

  private merge(forms: readonly Shape[], blend: number, join: (here: number, form: number) => number): this {
    const { layer, field, counts } = this;
    layer.fill(far);
    const reach = blend + 2 * this.cell;
    let [from, to]: [Vec3, Vec3] = [counts, [0, 0, 0]];
    for (const form of forms) {
      const [first, last] = this.cellsRound(form, reach);
      from = [Math.min(from[0], first[0]), Math.min(from[1], first[1]), Math.min(from[2], first[2])];
      to = [Math.max(to[0], last[0]), Math.max(to[1], last[1]), Math.max(to[2], last[2])];
      this.lay(form, first, last);
    }
    for (let i = from[0]; i <= to[0]; i++)
      for (let j = from[1]; j <= to[1]; j++)
        for (let k = from[2], at = (i * counts[1] + j) * counts[2] + k; k <= to[2]; k++, at++)
          if (layer[at] < far) field[at] = join(field[at], layer[at]);
    return this;
  }

  /** Takes a form into the layer, without a rounding. */
  private lay(form: Shape, first: Vec3, last: Vec3): void {
    const { low, counts, cell, layer } = this;
    for (let i = first[0]; i <= last[0]; i++)
      for (let j = first[1]; j <= last[1]; j++)
        for (let k = first[2], at = (i * counts[1] + j) * counts[2] + k; k <= last[2]; k++, at++)
          layer[at] = Math.min(
            layer[at],
            form.distance(low[0] + i * cell, low[1] + j * cell, low[2] + k * cell),
          );
  }

  private cellsRound({ min, max }: Shape, reach: number): [Vec3, Vec3] {
    const { low, counts, cell } = this;
    const first = (axis: 0 | 1 | 2): number =>
      Math.max(0, Math.floor((min[axis] - reach - low[axis]) / cell));
    const last = (axis: 0 | 1 | 2): number =>
      Math.min(counts[axis] - 1, Math.ceil((max[axis] + reach - low[axis]) / cell));
    return [
      [first(0), first(1), first(2)],
      [last(0), last(1), last(2)],
    ];
  }

  /**
   * Smooths the distance over the next cells (1-2-1 along each axis). A crease sharper than a cell would otherwise
   * come out ragged, or with faces that cross.
   */
  private soften(): void {
    const [nx, ny, nz] = this.counts;
    for (const stride of [ny * nz, nz, 1]) {
      this.layer.set(this.field);
      for (let at = stride; at < nx * ny * nz - stride; at++)
        this.field[at] = (this.layer[at - stride] + 2 * this.layer[at] + this.layer[at + stride]) / 4;
    }
  }

  /** The distance at a point of the block, linear between the cells' corners. */
  private at([x, y, z]: Vec3): number {
    const { low, counts, cell, field } = this;
    const [nx, ny, nz] = counts;
    const u = (x - low[0]) / cell;
    const v = (y - low[1]) / cell;
    const w = (z - low[2]) / cell;
    const i = Math.min(nx - 2, Math.max(0, Math.floor(u)));
    const j = Math.min(ny - 2, Math.max(0, Math.floor(v)));
    const k = Math.min(nz - 2, Math.max(0, Math.floor(w)));
    const [a, b, c] = [u - i, v - j, w - k];
    const at = (i * ny + j) * nz + k;
    const near = mixed(field, at, at + nz, b, c);
    return near + (mixed(field, at + ny * nz, at + ny * nz + nz, b, c) - near) * a;
  }
}

/** Linear between four corners of a cell's face: `c` of the way along the two lines, `b` of the way between them. */
function mixed(field: Float32Array, from: number, beside: number, b: number, c: number): number {
  const near = field[from] + (field[from + 1] - field[from]) * c;
  return near + (field[beside] + (field[beside + 1] - field[beside]) * c - near) * b;
}

/** Where nothing is near, mm: farther than any rounding reaches. */
const far = 8;

/** The lesser of two distances, rounded by a parabola of width `blend` where they are nearly equal. */
function smoothLeast(a: number, b: number, blend: number): number {
  if (blend <= 0) return Math.min(a, b);
  const h = Math.max(0, blend - Math.abs(a - b)) / blend;
  return Math.min(a, b) - (h * h * blend) / 4;
}

function standing({ positions, triangles }: TriangleMesh): TriangleMesh {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 2; i < positions.length; i += 3) lowest = Math.min(lowest, positions[i]);
  const moved = positions.map((value, i) => (i % 3 === 2 ? value - lowest : value));
  return { positions: moved, triangles };
}
