import { defaultChordError } from '../../geometry/index.ts';
import { KernelFault } from '../../kernel/index.ts';
import type { Boss } from '../mold.ts';
import { arcPoints, capPoints, type RevolvedOutline, type RevolvedPoint } from './revolved.ts';

// A hexagon's outlines are those of the circles within it: revolved with six sides drawn round them they are the hexagon.

/** Corners of a hexagon lie this much farther out than its flats: e = 2 s / sqrt 3. */
export const cornerShare = 2 / Math.sqrt(3);

/**
 * Outline of a boss's head about its own axis, from z = `from` (at or below the parting plane, as wide as at the
 * plane) to its tip: cap nut: collar and half ball (DIN 1587: r = d_k / 2); dome: cap, or a half ball on a collar
 * where it is higher than its radius; cone: straight to a point; hexagon: straight to a level top.
 */
export function bossOutline(boss: Boss, from = 0, chordError = defaultChordError): RevolvedOutline {
  const { headRadius: r, headHeight: h } = boss;
  if (!(r > 0 && h > 0)) throw new KernelFault(boss.id, 'a boss needs a head with a width and a height');
  const foot: RevolvedPoint[] = from < 0 ? [[r, from]] : [];
  return [[0, from], ...foot, ...headChain(boss, chordError)];
}

/** From the head's edge at the parting plane to its tip on the axis. */
function headChain(boss: Boss, chordError: number): RevolvedPoint[] {
  const { kind, headRadius: r, headHeight: h } = boss;
  if (kind === 'cone') {
    return [
      [r, 0],
      [0, h],
    ];
  }
  if (kind === 'hexagon') {
    return [
      [r, 0],
      [topOfHexagon(boss), h],
      [0, h],
    ];
  }
  const collar = Math.max(0, h - r);
  const cap = capPoints(r, Math.min(h, r), collar, chordError);
  return collar > 0 ? [[r, 0], ...cap] : cap;
}

/** Half the width across flats of a hexagon's top. */
export function topOfHexagon({ id, headRadius, headHeight, headDraftRad = 0 }: Boss): number {
  const top = headRadius - headHeight * Math.tan(headDraftRad);
  if (!(top > 0)) throw new KernelFault(id, 'its flats meet below its top');
  return top;
}

/** Half the width of the chamfer at a socket's mouth, 45 degrees, mm. Common practice, no published source. */
export const leadIn = 0.6;

/**
 * Outline of the socket for a boss's head: the head larger by its clearance, measured square to its surface, its walls
 * leaning at least as the boss asks, with a lead-in of 45 degrees at the mouth where the wall is steeper than that; all
 * of it `holes` wider across, for what holes come out tighter. It begins at z = `from`, below the parting plane, so
 * that the mouth is cut clean through.
 */
export function socketOutline(
  boss: Boss,
  from: number,
  chordError = defaultChordError,
  holes = 0,
): RevolvedOutline {
  const wall = socketChain(boss, chordError);
  const [mouth] = wall[0];
  const chamfered = withLeadIn(wall, mouth + leadIn);
  const wide = chamfered.map(([r, z]): RevolvedPoint => [r + holes / 2, z]);
  const tip: RevolvedPoint[] = holes > 0 ? [[0, wide[wide.length - 1][1]]] : [];
  return [[0, from], [wide[0][0], from], ...wide, ...tip];
}

/**
 * How far (mm) a head can move sideways in its socket at most: where they are nearest at one height, of a hexagon toward
 * its corners. A gap c square to a wall that leans is c / cos(lean) level; the ball of a nut or dome is nearest where
 * the drafted wall touches it, or, where it is only a cap that leans more than that, at its foot. The lead-in is left
 * out, since it touches nothing.
 */
export function sidewaysGap(boss: Boss): number {
  const { kind, headRadius: r, headHeight: h, clearance: c, socketDraftRad = 0, headDraftRad = 0 } = boss;
  if (kind === 'cone') return (c * Math.hypot(r, h)) / h;
  if (kind === 'hexagon') {
    const atTop = c * Math.max(0, Math.tan(socketDraftRad) - Math.tan(headDraftRad));
    return (c / Math.cos(headDraftRad) + atTop) * cornerShare;
  }
  const rise = Math.min(h, r);
  const ball = (r * r + rise * rise) / (2 * rise);
  const below = ball - rise;
  return Math.asin(below / ball) > socketDraftRad
    ? Math.sqrt((ball + c) ** 2 - below ** 2) - r
    : c / Math.cos(socketDraftRad);
}

/** Radius of a socket's mouth, lead-in and all, mm. */
export const socketMouth = (boss: Boss): number => socketOutline(boss, 0)[1][0];

/** How high a socket reaches over the parting plane, mm: higher than its head. */
export function socketTop(boss: Boss): number {
  const chain = socketChain(boss, defaultChordError);
  return chain[chain.length - 1][1];
}

/** How much wider than the head its socket's mouth is, lead-in left out, mm. */
export const mouthGap = (boss: Boss): number => socketChain(boss, defaultChordError)[0][0] - boss.headRadius;

const socketChain = (boss: Boss, chordError: number): readonly RevolvedPoint[] =>
  withDraft(widerChain(boss, chordError), boss.socketDraftRad ?? 0);

/** The head's chain moved outward by the clearance, again from the parting plane to the axis. */
function widerChain(boss: Boss, chordError: number): RevolvedPoint[] {
  const { kind, headRadius: r, headHeight: h, clearance: c, headDraftRad = 0 } = boss;
  if (kind === 'cone') {
    const slant = Math.hypot(r, h);
    return [
      [r + (c * slant) / h, 0],
      [0, h + (c * slant) / r],
    ];
  }
  if (kind === 'hexagon') {
    const aside = c / Math.cos(headDraftRad) - c * Math.tan(headDraftRad);
    return [
      [r + c / Math.cos(headDraftRad), 0],
      [topOfHexagon(boss) + aside, h + c],
      [0, h + c],
    ];
  }
  const collar = Math.max(0, h - r);
  const rise = Math.min(h, r);
  const radius = (r * r + rise * rise) / (2 * rise);
  const centerZ = collar + rise - radius;
  const start = Math.asin(Math.max(-1, (collar - centerZ) / (radius + c)));
  const arc = arcPoints([0, centerZ], radius + c, start, Math.PI / 2, chordError);
  const top: RevolvedPoint = [0, centerZ + radius + c];
  const wider = [...arc.slice(0, -1), top];
  return collar > 0 ? [[r + c, 0], ...wider] : [[wider[0][0], 0], ...wider.slice(1)];
}

/** The chain widened downward so that no wall of it is nearer upright than the draft: it leaves what it fits. */
function withDraft(chain: readonly RevolvedPoint[], draftRad: number): readonly RevolvedPoint[] {
  const lean = Math.tan(draftRad);
  const wide = [...chain];
  for (let i = wide.length - 2; i >= 0; i--) {
    const [[r, z], [above, top]] = [wide[i], wide[i + 1]];
    wide[i] = [Math.max(r, above + (top - z) * lean), z];
  }
  return wide;
}

/** The chain begun on the line r + z = `sum` instead, where it crosses that line. */
function withLeadIn(chain: readonly RevolvedPoint[], sum: number): readonly RevolvedPoint[] {
  for (let i = 1; i < chain.length; i++) {
    const before = chain[i - 1][0] + chain[i - 1][1] - sum;
    const after = chain[i][0] + chain[i][1] - sum;
    if (after < 0) continue;
    const t = before / (before - after);
    const crossing = [0, 1].map((axis) => chain[i - 1][axis] + t * (chain[i][axis] - chain[i - 1][axis]));
    return [[sum, 0], [crossing[0], crossing[1]], ...chain.slice(t < 1 ? i : i + 1)];
  }
  return chain;
}
