import type { Grid } from '../../geometry/index.ts';
import type { MeshData } from './measure.ts';
import { gridOver, scan } from './scan.ts';

/** A closed path of points (x, y) in mm, the last joined to the first. */
export type Ring = readonly (readonly [number, number])[];

/** Area of a ring, mm2: positive counter-clockwise, negative clockwise (shoelace formula). */
export function ringArea(ring: Ring): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    twice += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
  }
  return twice / 2;
}

/**
 * Outlines of a mesh's shadow on the plane z = 0, light from above: outer rings counter-clockwise, holes clockwise,
 * in a fixed order. The rings' points lie on the true silhouette, where it crosses the lines of a grid of `cell` mm;
 * between them the ring is straight, so it strays by at most about cell2 / (8 R) at a bend of radius R. Islands,
 * holes and necks smaller than two cells may be lost or joined.
 */
export function silhouette(mesh: MeshData, cell: number): Ring[] {
  if (mesh.triangles.length === 0) return [];
  const grid = gridOver(mesh, { cell }, 2);
  const rows = spansOnLines(mesh, grid, 'x');
  const columns = spansOnLines(mesh, grid, 'y');
  return traceRings(grid, rows, columns);
}

interface LineSpans {
  /** 1 where the mesh is over the node. */
  readonly inside: Uint8Array;
  /** In the gap after the node: how far covering reaches from below, and from where it reaches to the next node. */
  readonly ends: Float32Array;
  readonly starts: Float32Array;
}

function spansOnLines(mesh: MeshData, grid: Grid, along: 'x' | 'y'): LineSpans {
  const { cell, nx, ny } = grid;
  const u0 = along === 'x' ? grid.x0 : grid.y0;
  const step = along === 'x' ? 1 : nx;
  const lineStep = along === 'x' ? nx : 1;
  const inside = new Uint8Array(nx * ny);
  const ends = new Float32Array(nx * ny).fill(Number.NEGATIVE_INFINITY);
  const starts = new Float32Array(nx * ny).fill(Number.POSITIVE_INFINITY);
  scan(mesh, grid, along, (line, from, to) => {
    const first = Math.ceil((from - u0) / cell);
    const last = Math.ceil((to - u0) / cell) - 1;
    const base = line * lineStep;
    for (let i = first; i <= last; i++) inside[base + i * step] = 1;
    const before = base + (first - 1) * step;
    const after = base + last * step;
    if (from < starts[before]) starts[before] = from;
    if (to > ends[after]) ends[after] = to;
  });
  return { inside, ends, starts };
}

/**
 * Marching squares. An edge is known by its lower node and direction: 2 node for the one along x, 2 node + 1 along
 * y. Every crossed edge is left once, with the inside on the left, so `next` holds whole rings.
 */
function traceRings(grid: Grid, rows: LineSpans, columns: LineSpans): Ring[] {
  const { nx, ny } = grid;
  const { inside } = rows;
  const next = new Int32Array(nx * ny * 2).fill(-1);
  for (let j = 0; j < ny - 1; j++) {
    for (let i = 0; i < nx - 1; i++) {
      const k = j * nx + i;
      const shape = inside[k] | (inside[k + 1] << 1) | (inside[k + 1 + nx] << 2) | (inside[k + nx] << 3);
      if (shape === 0 || shape === 15) continue;
      const sides = [2 * k, 2 * (k + 1) + 1, 2 * (k + nx), 2 * k + 1];
      for (const [from, to] of steps[shape]) next[sides[from]] = sides[to];
    }
  }
  const rings: Ring[] = [];
  for (let edge = 0; edge < next.length; edge++) {
    if (next[edge] < 0) continue;
    const ring: (readonly [number, number])[] = [];
    for (let at = edge; next[at] >= 0; ) {
      ring.push(crossing(grid, at, at % 2 === 0 ? rows : columns, inside));
      const following = next[at];
      next[at] = -1;
      at = following;
    }
    rings.push(withoutRepeats(ring));
  }
  return rings.filter((ring) => ring.length > 2);
}

// Sides of a square: 0 below, 1 right, 2 above, 3 left. Corners: 1 lower left, 2 lower right, 4 upper right, 8 upper
// left. From side to side with the inside on the left; saddles (5, 10) keep the two corners apart.
const steps: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [
    [0, 3],
    [2, 1],
  ],
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [
    [1, 0],
    [3, 2],
  ],
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
];

function crossing(grid: Grid, edge: number, spans: LineSpans, inside: Uint8Array): readonly [number, number] {
  const { cell, x0, y0, nx } = grid;
  const node = edge >> 1;
  const x = x0 + (node % nx) * cell;
  const y = y0 + Math.floor(node / nx) * cell;
  const along = edge % 2 === 0;
  const low = along ? x : y;
  const found = inside[node] ? spans.ends[node] : spans.starts[node];
  // Where rows and columns disagree by rounding the span is missing: the node itself is then on the outline.
  const at = Number.isFinite(found)
    ? Math.min(Math.max(found, low), low + cell)
    : inside[node]
      ? low
      : low + cell;
  return along ? [at, y] : [x, at];
}

const withoutRepeats = (ring: Ring): Ring =>
  ring.filter(([x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length];
    return x !== px || y !== py;
  });
