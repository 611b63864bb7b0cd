import type { Point2, Vec3 } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';

/** How far (mm) a cutter stands out of the faces it cuts through, so that no two faces lie in one plane. */
const overlap = 0.01;
/** How far a wedge runs on past its edge, mm, where no cone takes over: there is nothing there, or the edge goes on. */
const runOn = 0.005;
/** Turns to the right up to this (rad) are no inner corner. */
const straight = 1e-3;
/** Steps of the cone round an inner corner, and how far it reaches into the wedges on both sides, rad. */
const coneStep = Math.PI / 12;
const lap = 0.01;

/**
 * Cutters that take the lower edge (z = 0) off a plate by 45 degrees: what is nearer to a wall than `size` less its
 * height goes. `rings` have the material on their left: outer ones counter-clockwise, openings clockwise.
 */
export const footCutters = (
  scope: Scope,
  rings: readonly (readonly Point2[])[],
  size: number,
  what: string,
): Body[] => rings.flatMap((ring) => ringCutters(scope, ring, size, what));

interface Edge {
  readonly from: Point2;
  readonly to: Point2;
  /** Unit vector along it. */
  readonly along: Point2;
}

function ringCutters(scope: Scope, ring: readonly Point2[], size: number, what: string): Body[] {
  const edges = ring.flatMap((from, i) => edgeOf(from, ring[(i + 1) % ring.length]));
  const corners = edges.map((edge, i) => turnBetween(edges[(i + edges.length - 1) % edges.length], edge));
  const past = (corner: number): number => (corner < -straight ? 0 : runOn);
  return edges.flatMap((edge, i) => {
    const ends = [past(corners[i]), past(corners[(i + 1) % edges.length])] as const;
    const wedge = scope.hull(wedgePoints(edge, ends, size), what);
    return corners[i] < -straight ? [wedge, scope.hull(conePoints(edge, corners[i], size), what)] : [wedge];
  });
}

function edgeOf(from: Point2, to: Point2): Edge[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length > 0 ? [{ from, to, along: [(to[0] - from[0]) / length, (to[1] - from[1]) / length] }] : [];
}

/** Turn to the left from one edge to the next, rad; to the right, negative, round an inner corner. */
const turnBetween = ({ along: [ax, ay] }: Edge, { along: [bx, by] }: Edge): number =>
  Math.atan2(ax * by - ay * bx, ax * bx + ay * by);

/** A three-sided bar under an edge; its slope meets the wall at height `size`. */
function wedgePoints(
  { from, to, along: [ux, uy] }: Edge,
  [before, after]: readonly [number, number],
  size: number,
): Vec3[] {
  const section = [
    [size + overlap, -overlap],
    [-overlap, size + overlap],
    [-overlap, -overlap],
  ];
  const ends = [
    [from, -before],
    [to, after],
  ] as const;
  return ends.flatMap(([[x, y], on]) =>
    section.map(([inward, z]): Vec3 => [x + ux * on - uy * inward, y + uy * on + ux * inward, z]),
  );
}

/** Round an inner corner, at the start of an edge: all that is as near to the corner as the wedges reach. */
function conePoints({ from: [x, y], along: [ux, uy] }: Edge, turnRad: number, size: number): Vec3[] {
  const steps = Math.ceil(-turnRad / coneStep);
  const inward = Math.atan2(ux, -uy);
  const foot = Array.from({ length: steps + 1 }, (_, k): Vec3 => {
    const angle = inward - lap + ((2 * lap - turnRad) * k) / steps;
    const reach = size + overlap;
    return [x + reach * Math.cos(angle), y + reach * Math.sin(angle), -overlap];
  });
  return [[x, y, size], [x, y, -overlap], ...foot];
}
