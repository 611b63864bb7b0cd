import type { Point2 } from '../../geometry/index.ts';
import { MinHeap } from './min-heap.ts';
import { isInRing, nearestOnRing, piecesApart } from './ring.ts';

/** What a way keeps off, seen from above. */
export interface Obstacle {
  readonly outline: readonly Point2[];
  /** Least distance of the way's middle line from the outline, mm. */
  readonly gap: number;
}

export interface Course {
  readonly from: Point2;
  /** How far a place still is from where ways end, at least, mm; 0 there. */
  left(at: Point2): number;
  /** Distances from the axis it stays between. */
  readonly between: readonly [number, number];
  readonly obstacles: readonly Obstacle[];
}

/** Nodes of the search along the radius: the way found is drawn taut afterwards, so that they only decide which side it passes. */
const nodesAlongRadius = 160;
const leastCell = 0.4;

/**
 * A short way from a point to the well or the rim that keeps its distance to every obstacle: A* on a square grid of free nodes (Hart,
 * Nilsson, Raphael 1968), then drawn taut over the exact outlines. Undefined where there is none. Bounded by the nodes of the grid.
 */
export function route(course: Course): Point2[] | undefined {
  const free = new Free(course);
  if (!free.at(course.from)) return undefined;
  const nodes = search(course, free);
  return nodes && taut([course.from, ...nodes], free);
}

class Free {
  private readonly boxes: readonly (Obstacle & { readonly box: readonly [number, number, number, number] })[];
  private readonly between: Course['between'];

  constructor({ obstacles, between }: Course) {
    this.between = between;
    this.boxes = obstacles.map((obstacle) => {
      const [xs, ys] = [obstacle.outline.map(([x]) => x), obstacle.outline.map(([, y]) => y)];
      const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
      return { ...obstacle, box };
    });
  }

  at(point: Point2): boolean {
    const radius = Math.hypot(...point);
    if (radius < this.between[0] || radius > this.between[1]) return false;
    return this.near(point, point).every(({ outline, gap }) => {
      if (isInRing(outline, point)) return false;
      const { at } = nearestOnRing(outline, point);
      return Math.hypot(at[0] - point[0], at[1] - point[1]) >= gap;
    });
  }

  /** Whether the straight way between two free points is free; the well may be crossed by none. */
  along(from: Point2, to: Point2): boolean {
    if (this.between[0] > 0 && piecesApart(from, to, [0, 0], [0, 0]) < this.between[0]) return false;
    return this.near(from, to).every(({ outline, gap }) =>
      outline.every((corner, i) => piecesApart(from, to, corner, outline[(i + 1) % outline.length]) >= gap),
    );
  }

  private near(from: Point2, to: Point2): readonly Obstacle[] {
    const [x0, x1] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]];
    const [y0, y1] = from[1] < to[1] ? [from[1], to[1]] : [to[1], from[1]];
    return this.boxes.filter(
      ({ box, gap }) => x1 > box[0] - gap && x0 < box[2] + gap && y1 > box[1] - gap && y0 < box[3] + gap,
    );
  }
}

/** The nodes from the first beside the beginning to the goal. */
function search({ from, left, between }: Course, free: Free): Point2[] | undefined {
  const cell = Math.max(leastCell, between[1] / nodesAlongRadius);
  const half = Math.ceil(between[1] / cell) + 1;
  const side = 2 * half + 1;
  const place = (node: number): Point2 => [
    ((node % side) - half) * cell,
    (Math.floor(node / side) - half) * cell,
  ];
  const cost = new Float64Array(side * side).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(side * side).fill(-1);
  const seen = new Int8Array(side * side);
  const queue = new MinHeap();
  const isFree = (node: number): boolean => {
    if (seen[node] === 0) seen[node] = free.at(place(node)) ? 1 : -1;
    return seen[node] === 1;
  };
  const offer = (node: number, by: number, origin: number): void => {
    if (by >= cost[node] || !isFree(node)) return;
    cost[node] = by;
    before[node] = origin;
    queue.push(by + left(place(node)), node);
  };
  const [i, j] = [Math.round(from[0] / cell) + half, Math.round(from[1] / cell) + half];
  for (const [di, dj] of around) {
    const node = (j + dj) * side + i + di;
    const at = place(node);
    if (isFree(node) && free.along(from, at)) offer(node, Math.hypot(at[0] - from[0], at[1] - from[1]), -1);
  }
  const done = new Uint8Array(side * side);
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    if (done[node]) continue;
    done[node] = 1;
    if (left(place(node)) === 0) return trace(node, before).map(place);
    const [column, row] = [node % side, Math.floor(node / side)];
    for (const [di, dj] of around) {
      const [u, v] = [column + di, row + dj];
      if (u < 0 || v < 0 || u >= side || v >= side) continue;
      offer(v * side + u, cost[node] + cell * Math.hypot(di, dj), node);
    }
  }
  return undefined;
}

const around = [-1, 0, 1].flatMap((j) => [-1, 0, 1].map((i) => [i, j] as const));

function trace(last: number, before: Int32Array): number[] {
  const nodes: number[] = [];
  for (let node = last; node >= 0; node = before[node]) nodes.push(node);
  return nodes.reverse();
}

/** Only the points a taut thread would touch: from each on to the farthest that is seen from it. */
function taut(points: readonly Point2[], free: Free): Point2[] {
  const kept: Point2[] = [points[0]];
  for (let at = 0; at < points.length - 1; ) {
    let next = at + 1;
    for (let far = points.length - 1; far > next; far--) if (free.along(points[at], points[far])) next = far;
    kept.push(points[next]);
    at = next;
  }
  return kept;
}
