import { type Bounds2, boundsOfOutline, line, type Path, type Point2, placed } from '../kernel/index.ts';
import { lettersOf } from '../lettering/index.ts';

const height = 3;
const leading = 4.5;
const gap = 1.5;

export interface LabelWish {
  /** What it stands beside. */
  readonly rings: readonly (readonly Point2[])[];
  /** Lines of text, the fullest first; the first that finds room is taken. */
  readonly texts: readonly (readonly string[])[];
}

/**
 * Texts beside their openings, each with a line to its own, level, clear of all openings, of what is `drawn`, of each
 * other and of the rim; none where none fits.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  blocked: readonly (readonly Point2[])[],
  drawn: readonly Path[],
  radius: number,
): Path[] {
  const taken = drawn.map((path) => boundsOfOutline([path]));
  const walls = blocked.map((ring) => ({ ring, box: boxOf(ring) }));
  const free = (box: Bounds2): boolean =>
    corners(box).every(([x, y]) => Math.hypot(x, y) < radius) &&
    taken.every((other) => apart(box, other)) &&
    walls.every((wall) => apart(box, wall.box) || clearOf(box, wall.ring));
  return wishes.flatMap(({ rings, texts }) => {
    if (rings.length === 0) return [];
    const round = boxOf(rings.flat());
    for (const lines of texts) {
      const letters = lines.flatMap((words, i) =>
        lettersOf({ words, at: [0, -i * leading], height, turnRad: 0, anchor: 'middle' }),
      );
      const own = boundsOfOutline(letters);
      for (const [x, y] of spotsBeside(round, own)) {
        const at: Point2 = [x - (own.min[0] + own.max[0]) / 2, y - (own.min[1] + own.max[1]) / 2];
        const moved = letters.map((path) => placed(path, 0, at));
        const box = grown(boundsOfOutline(moved), gap / 2);
        if (!free(box)) continue;
        taken.push(box);
        return [...moved, leader(box, rings.flat())];
      }
    }
    return [];
  });
}

/** From a text's box to the corner of its opening that is nearest to it. */
function leader({ min, max }: Bounds2, corners: readonly Point2[]): Path {
  const pairs = corners.map((to) => {
    const from: Point2 = [
      Math.min(Math.max(to[0], min[0]), max[0]),
      Math.min(Math.max(to[1], min[1]), max[1]),
    ];
    return { from, to, far: distance(from, to) };
  });
  const { from, to } = pairs.reduce((best, pair) => (pair.far < best.far ? pair : best));
  return line(from, to);
}

const distance = (a: Point2, b: Point2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Middles for a block of text on all sides of a box, near ones first. */
function spotsBeside({ min, max }: Bounds2, own: Bounds2): Point2[] {
  const [w, h] = [own.max[0] - own.min[0], own.max[1] - own.min[1]];
  const [cx, cy] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  return [0, 2, 4, 8].flatMap((more): Point2[] => {
    const [dx, dy] = [(max[0] - min[0] + w) / 2 + gap + more, (max[1] - min[1] + h) / 2 + gap + more];
    const along = [0, 0.25, -0.25, 0.5, -0.5];
    return along.flatMap((share): Point2[] => [
      [cx + dx, cy + share * 2 * dy],
      [cx - dx, cy + share * 2 * dy],
      [cx + share * 2 * dx, cy + dy],
      [cx + share * 2 * dx, cy - dy],
    ]);
  });
}

const corners = ({ min, max }: Bounds2): Point2[] => [min, [max[0], min[1]], max, [min[0], max[1]]];

const grown = ({ min, max }: Bounds2, by: number): Bounds2 => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
});

const boxOf = (points: readonly Point2[]): Bounds2 =>
  boundsOfOutline([{ kind: 'track', closed: false, corners: points.map((at) => ({ at })) }]);

const apart = (a: Bounds2, b: Bounds2): boolean =>
  [0, 1].some((axis) => a.min[axis] > b.max[axis] || b.min[axis] > a.max[axis]);

/** No side of the ring comes into the box: each is looked at in steps of half a millimeter. */
function clearOf({ min, max }: Bounds2, ring: readonly Point2[]): boolean {
  return ring.every(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 0.5));
    return Array.from({ length: steps }, (_, k) => k / steps).every((t) => {
      const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)];
      return x < min[0] || x > max[0] || y < min[1] || y > max[1];
    });
  });
}
