import { type Joint, sector, tongue } from './joint.ts';
import { type Obstacle, pointClearance, rayClearance, reachesInto } from './obstacles.ts';

/** A cut from the axis outward at an angle, with its joint. */
export interface Seam {
  readonly angleRad: number;
  readonly joint: Joint;
  /** To the nearest outline or boss, mm; negative where the cut goes through it. */
  readonly clearance: number;
  /** What is nearest; undefined where nothing is on the disc. */
  readonly nearest?: string;
  /** How many texts the cut or its joint goes through. */
  readonly textsCut: number;
}

export interface Room {
  readonly x: number;
  readonly y: number;
}

/** What is to be split: radius about the axis, what lies on it, and where along a ray there is material. */
export interface Whole {
  readonly radius: number;
  readonly obstacles: readonly Obstacle[];
  /** At how many of a few heights a tongue's outline is all material. */
  solidLevels(outline: readonly (readonly [number, number])[]): number;
}

/** Sectors at most: more, and a joint has no room near the axis. */
const most = 8;
const phases = 72;
/** How far a seam may be turned from even spacing, as a share of the sector. */
const slack = 0.15;
const nudges = 9;
/** Where along the radius a joint holds best, all else equal: a little outside the middle. */
const middle = 0.6;

/** The fewest seams whose sectors fit the room, turned so that they stay as clear as can be; undefined where none do. */
export function chooseSeams(whole: Whole, room: Room): Seam[] | undefined {
  for (let count = 2; count <= most; count++) {
    if (!mayFit(whole.radius, count, room)) continue;
    const angles = clearestAngles(whole, count);
    // Joints take long to find and only add to a sector.
    if (!angles.every((_, k) => fits(bareSector(whole.radius, angles, k), room) !== undefined)) continue;
    const seams = withJoints(whole, angles);
    if (seams && angles.every((_, k) => fits(sectorPoints(whole.radius, seams, k), room) !== undefined))
      return seams;
  }
  return undefined;
}

/** More room than this beside a seam is of little use, mm. Common practice. */
const roomy = 4;
/** Of how much clearance (mm) a seam through a text is worth giving up. */
const perText = 0.3;

/** How good a place for a seam is, about its clearance in mm. */
function least(whole: Whole, angle: number): number {
  let clear = whole.radius;
  let texts = 0;
  for (const obstacle of whole.obstacles) {
    const clearance = rayClearance(obstacle, angle);
    if (!obstacle.text) clear = Math.min(clear, clearance);
    else if (clearance < 0) texts++;
  }
  return Math.min(clear, roomy) + clear / 100 - perText * texts;
}

function clearestAngles(whole: Whole, count: number): number[] {
  const step = (2 * Math.PI) / count;
  let best: number[] = [];
  let score = Number.NEGATIVE_INFINITY;
  for (let phase = 0; phase < phases; phase++) {
    const even = Array.from({ length: count }, (_, k) => (step * phase) / phases + step * k);
    const angles = count === 2 ? even : even.map((angle) => clearestNear(whole, angle, slack * step));
    const found = Math.min(...angles.map((angle) => least(whole, angle)));
    // A hair's breadth, so that equal choices do not hang on rounding.
    if (found > score + 1e-6) [best, score] = [angles, found];
  }
  return best;
}

function clearestNear(whole: Whole, angle: number, by: number): number {
  let [best, most] = [angle, least(whole, angle)];
  for (let k = -nudges; k <= nudges; k++) {
    const tried = angle + (by * k) / nudges;
    const clear = least(whole, tried);
    if (clear > most + 1e-6) [best, most] = [tried, clear];
  }
  return best;
}

/** Tongues at the same distance from the axis differ by so much in width, mm: far more than any clearance. */
const widthStep = 2.5;
const narrowest = 4;
/** Material left round a joint, as a share of its neck. */
const besides = 0.25;

/**
 * Whether a piece with the one joint runs into its neighbor where the other belongs: apart by more than half a tongue,
 * or unlike in width. A narrow tongue does enter a wide socket, but whatever pieces change places, one wide tongue then
 * meets a narrow socket.
 */
const unlike = (a: Joint, b: Joint): boolean =>
  Math.abs(a.radius - b.radius) >= 0.75 * Math.max(a.neck, b.neck) || Math.abs(a.neck - b.neck) >= widthStep;

/** A joint on each seam, no two alike: so the pieces go together in one way only. */
function withJoints(whole: Whole, angles: readonly number[]): Seam[] | undefined {
  const neck = Math.min(12, Math.max(4, 0.08 * whole.radius));
  const taken: Joint[] = [];
  const seams: Seam[] = [];
  for (const [k, angleRad] of angles.entries()) {
    const next = k + 1 < angles.length ? angles[k + 1] : angles[0] + 2 * Math.PI;
    const joint = findJoint(whole, angleRad, next - angleRad, neck, taken);
    if (!joint) return undefined;
    taken.push(joint);
    const near = whole.obstacles
      .filter(({ text }) => !text)
      .map((obstacle) => ({ id: obstacle.id, clearance: rayClearance(obstacle, angleRad) }))
      .sort((a, b) => a.clearance - b.clearance)[0];
    seams.push({
      angleRad,
      joint,
      clearance: near?.clearance ?? whole.radius,
      textsCut: textsCut(whole, angleRad, joint),
      ...(near && { nearest: near.id }),
    });
  }
  return seams;
}

const textsCut = ({ obstacles }: Whole, angleRad: number, joint: Joint): number => {
  const outline = tongue(joint, angleRad);
  return obstacles.filter((one) => one.text && (rayClearance(one, angleRad) < 0 || reachesInto(one, outline)))
    .length;
};

/** The widest joint that has room on a seam, beside those that are taken. */
function findJoint(
  whole: Whole,
  angle: number,
  width: number,
  widest: number,
  taken: readonly Joint[],
): Joint | undefined {
  for (let neck = widest; neck >= narrowest; neck -= widthStep) {
    const found = jointOfWidth(whole, angle, width, neck, taken);
    if (found) return found;
  }
  return undefined;
}

function jointOfWidth(whole: Whole, angle: number, width: number, neck: number, taken: readonly Joint[]) {
  const depth = 0.7 * neck;
  const candidates: { joint: Joint; levels: number; clear: number; off: number }[] = [];
  for (let radius = neck; radius < whole.radius - neck / 2; radius += neck / 4) {
    const joint = { radius, neck, depth };
    if (taken.some((other) => !unlike(joint, other))) continue;
    if (width < Math.PI / 2 && radius * Math.sin(width) < 2 * depth) continue;
    const levels = whole.solidLevels(tongue(joint, angle, Math.max(1, besides * neck)));
    if (levels === 0) continue;
    const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    const clear = Math.min(neck, ...whole.obstacles.map((o) => pointClearance(o, x, y) - neck));
    candidates.push({ joint, levels, clear, off: Math.abs(radius - middle * whole.radius) });
  }
  return candidates.sort((a, b) => b.levels - a.levels || b.clear - a.clear || a.off - b.off)[0]?.joint;
}

/** Outline points of a sector with the tongue it carries. */
function sectorPoints(radius: number, seams: readonly Seam[], k: number): (readonly [number, number])[] {
  const from = seams[k].angleRad;
  const last = seams[(k + 1) % seams.length];
  const to = k + 1 < seams.length ? last.angleRad : last.angleRad + 2 * Math.PI;
  return [...sectorOutline(radius, from, to), ...tongue(last.joint, last.angleRad)];
}

/** Of so many sectors one is as wide as all of equal width; `fits` may miss a turn by so much as 5 % of the room. */
const mayFit = (radius: number, count: number, { x, y }: Room): boolean =>
  fits(sectorOutline(radius, 0, (2 * Math.PI) / count), { x: 1.05 * x, y: 1.05 * y }) !== undefined;

function bareSector(radius: number, angles: readonly number[], k: number) {
  const to = k + 1 < angles.length ? angles[k + 1] : angles[0] + 2 * Math.PI;
  return sectorOutline(radius, angles[k], to);
}

function sectorOutline(radius: number, from: number, to: number): (readonly [number, number])[] {
  const fine = Array.from({ length: 61 }, (_, i): readonly [number, number] => {
    const angle = from + ((to - from) * i) / 60;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  return [...sector(from, to, radius), ...fine];
}

const turns = 36;

/** A turn about z (rad, less than half a turn) that makes points fit a room; undefined where none does. */
export function fits(points: readonly (readonly [number, number])[], room: Room): number | undefined {
  for (let k = 0; k < turns; k++) {
    const angle = (Math.PI * k) / turns;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const [px, py] of points) {
      const x = px * c - py * s;
      const y = px * s + py * c;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
    if (x1 - x0 <= room.x && y1 - y0 <= room.y) return angle;
  }
  return undefined;
}
