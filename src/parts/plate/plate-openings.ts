import { hole, type Path, type Point2 } from '../../geometry/index.ts';
import type { Profile, Scope } from '../../kernel/index.ts';
import { headReach, type Mold, type Sprue } from '../../mold/index.ts';
import { type FlatFixture, flatFixture, holeFit } from '../making/index.ts';

/** What a plate that lies on the disc leaves room for. */
export interface Standing {
  readonly sprue?: Sprue;
  readonly bosses: readonly { readonly x: number; readonly y: number; readonly radius: number }[];
  readonly fixture: FlatFixture;
}

export function standingOn({ sprue, bosses, fixture }: Mold): Standing {
  return {
    ...(sprue && { sprue }),
    bosses: bosses.map((boss) => ({ x: boss.x, y: boss.y, radius: headReach(boss) })),
    fixture: flatFixture(fixture),
  };
}

/** Holes over the heads of the bosses. */
export const bossHoles = ({ bosses, fixture }: Standing): Path[] =>
  bosses.map(({ x, y, radius }) => hole([x, y], radius + holeFit(fixture, 2 * radius) / 2));

/** The hole over the sprue form's shaft, none without one. */
export function shaftHole({ sprue, fixture }: Standing): Path[] {
  if (!sprue) return [];
  const foot = sprue.holeRadius + sprue.fillet;
  return [hole([0, 0], foot + holeFit(fixture, 2 * foot) / 2)];
}

/** Distance (mm) from a place on the edge to the nearest corner of an opening. */
export const roomBehind = ([x, y]: Point2, openings: readonly (readonly Point2[])[]): number =>
  openings.flat().reduce((least, [px, py]) => Math.min(least, Math.hypot(px - x, py - y)), Infinity);

/** A profile's outlines without their islands, which would drop out of an opening. */
export const outerRings = (scope: Scope, profile: Profile): Point2[][] =>
  scope
    .outlinesOf(profile)
    .filter((ring) => signedArea(ring) > 0)
    .map((ring) => ring.map(([x, y]): Point2 => [x, y]));

const signedArea = (ring: readonly Point2[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/** Whether a point is inside a ring (even-odd rule). */
export function holds(ring: readonly Point2[], [x, y]: Point2): boolean {
  return ring.reduce((inside, [ax, ay], i) => {
    const [bx, by] = ring[(i + ring.length - 1) % ring.length];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}
