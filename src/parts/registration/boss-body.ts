import {
  circumscribed,
  compose,
  type Matrix4,
  rotation,
  segmentsFor,
  translation,
} from '../../geometry/index.ts';
import { type Body, KernelFault, type Scope } from '../../kernel/index.ts';
import {
  type Boss,
  bossOutline,
  hexagonCorners,
  overlap,
  type RevolvedOutline,
  socketOutline,
} from '../../mold/index.ts';
import type { HalfName } from '../making/index.ts';

const bossPlace = (boss: Boss): Matrix4 =>
  compose(translation(boss.x, boss.y, 0), rotation('z', boss.turnRad));

/**
 * A whole boss in the mold frame: root below the parting plane (hexagon of a cap nut, else as wide as the head at the
 * plane), head above. As a `pin` its circles are drawn by inscribed polygons, as a `hole` by circumscribed ones.
 */
function bossBody(scope: Scope, boss: Boss, chordError: number, as: 'pin' | 'hole'): Body {
  return scope.move(uprightBoss(scope, boss, chordError, as), bossPlace(boss), boss.id);
}

/** The boss about its own axis, not yet turned or placed. */
export function uprightBoss(scope: Scope, boss: Boss, chordError: number, as: 'pin' | 'hole'): Body {
  if (boss.kind !== 'cap nut') {
    return revolved(scope, bossOutline(boss, -boss.rootDepth, chordError), boss, chordError, as);
  }
  const hexagon = hexagonBody(scope, boss, boss.acrossFlats, 0);
  // The head begins inside the hexagon: two bodies that only touch would leave the kernel a seam to decide on.
  const head = revolved(scope, bossOutline(boss, -boss.rootDepth / 2, chordError), boss, chordError, as);
  return scope.unite([hexagon, head], boss.id);
}

/** The head alone, to be one with a rigid lower half: it begins 1 mm (at most half the half) below the plane. */
export function headBody(scope: Scope, boss: Boss, lower: number, chordError: number): Body {
  const outline = bossOutline(boss, -Math.min(overlap, lower / 2), chordError);
  return scope.move(revolved(scope, outline, boss, chordError, 'pin'), bossPlace(boss), boss.id);
}

/**
 * Cutter of a loose boss in one half of rubber or silicone, which take its shape. The two sides of a cap nut are cut
 * apart: its hexagon ends on the parting plane, and faces that only coincide would leave a film.
 */
export function imprintBody(scope: Scope, side: HalfName, boss: Boss, chordError: number): Body {
  if (boss.kind !== 'cap nut') return bossBody(scope, boss, chordError, 'hole');
  if (side === 'lower') return pocketBody(scope, boss, 0);
  const head = revolved(scope, bossOutline(boss, -overlap, chordError), boss, chordError, 'hole');
  return scope.move(head, bossPlace(boss), boss.id);
}

/** Cutter of the socket in a rigid upper half, with clearance, draft and lead-in; `holes` wider across. */
export function socketBody(scope: Scope, boss: Boss, chordError: number, holes: number): Body {
  const outline = socketOutline(boss, -overlap, chordError, holes);
  return scope.move(revolved(scope, outline, boss, chordError, 'hole'), bossPlace(boss), boss.id);
}

/** Cutter of the pocket a cap nut's hexagon sits in, in a lower half: larger by the clearance all round, and `holes` across. */
export function pocketBody(scope: Scope, boss: Boss, holes: number): Body {
  const pocket = hexagonBody(scope, boss, boss.acrossFlats + 2 * boss.clearance + holes, overlap);
  return scope.move(pocket, bossPlace(boss), boss.id);
}

/** A hexagon prism from the root's depth to `top`. */
function hexagonBody(scope: Scope, boss: Boss, acrossFlats: number, top: number): Body {
  if (!(acrossFlats > 0 && boss.rootDepth > 0)) {
    throw new KernelFault(boss.id, 'a cap nut needs a hexagon with a width and a height');
  }
  return scope.extrude([hexagonCorners(acrossFlats)], -boss.rootDepth, top, boss.id);
}

function revolved(
  scope: Scope,
  outline: RevolvedOutline,
  boss: Boss,
  chordError: number,
  as: 'pin' | 'hole',
): Body {
  const hexagon = boss.kind === 'hexagon';
  const segments = hexagon ? 6 : segmentsFor(boss.headRadius + boss.clearance, chordError);
  const drawn =
    as === 'pin' && !hexagon ? outline : outline.map(([r, z]) => [circumscribed(r, segments), z] as const);
  return scope.revolve(drawn, segments, boss.id);
}
