import { type Bounds2, boundsOfOutline, type Path, type Point2, polygon } from '../../geometry/index.ts';
import { holds } from './plate-openings.ts';

/** Where on a plate something may be engraved: within a radius about the axis, clear of openings and of what is there. */
export interface FreeSpace {
  isFree(box: Bounds2): boolean;
  /** Whether a line from one point to another goes through nothing that is taken. */
  isFreeLine(from: Point2, to: Point2): boolean;
  take(box: Bounds2): void;
  /** Gives back what was taken. */
  leave(box: Bounds2): void;
}

/** Space within `radius`, clear of the rings that are `open` and of what is `drawn`. */
export function freeSpace(
  radius: number,
  open: readonly (readonly Point2[])[],
  drawn: readonly Path[],
): FreeSpace {
  const taken = new Set(drawn.map((path) => boundsOfOutline([path])));
  const walls = open.map((ring) => ({ ring, box: boxOf(ring) }));
  return {
    isFree: (box) =>
      cornersOf(box).every(([x, y]) => Math.hypot(x, y) < radius) &&
      !some(taken, (other) => !apart(box, other)) &&
      walls.every((wall) => apart(box, wall.box) || clearOf(box, wall.ring)),
    isFreeLine: (from, to) => !some(taken, (box) => crosses(box, from, to)),
    take: (box) => {
      taken.add(box);
    },
    leave: (box) => {
      taken.delete(box);
    },
  };
}

/** Counter-clockwise. */
export const cornersOf = ({ min, max }: Bounds2): Point2[] => [min, [max[0], min[1]], max, [min[0], max[1]]];

export const boxOf = (points: readonly Point2[]): Bounds2 => boundsOfOutline([polygon(points)]);

/** Without a list of what is taken being made anew: this is asked some hundred thousand times for a full plate. */
function some<T>(things: Iterable<T>, fits: (thing: T) => boolean): boolean {
  for (const thing of things) if (fits(thing)) return true;
  return false;
}

const apart = (a: Bounds2, b: Bounds2): boolean =>
  a.min[0] > b.max[0] || b.min[0] > a.max[0] || a.min[1] > b.max[1] || b.min[1] > a.max[1];

/** Neither does a side of the ring come into the box, nor does the box lie inside of the ring. */
const clearOf = (box: Bounds2, ring: readonly Point2[]): boolean =>
  !holds(ring, box.min) && ring.every((at, i) => !crosses(box, at, ring[(i + 1) % ring.length]));

/** Whether any of a straight line is in a box: what of it is between the box's sides along x and along y overlaps. */
function crosses({ min, max }: Bounds2, from: Point2, to: Point2): boolean {
  let [first, last] = [0, 1];
  for (const axis of [0, 1] as const) {
    const run = to[axis] - from[axis];
    if (run === 0) {
      if (from[axis] < min[axis] || from[axis] > max[axis]) return false;
      continue;
    }
    const [a, b] = [(min[axis] - from[axis]) / run, (max[axis] - from[axis]) / run];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  return first <= last;
}
