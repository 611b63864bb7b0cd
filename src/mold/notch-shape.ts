import { defaultChordError } from '../kernel/index.ts';
import type { Notch } from './mold.ts';
import { arcPoints } from './turned.ts';

/** Radius of a notch's root as a share of its depth: rubber tears from a sharp one. Common practice, no published source. */
const rootShare = 0.25;

/**
 * A notch seen from above at angle 0, x outward from the disc's axis, mm: its mouth is the chord at x = `outer` of the
 * rim, its root an arc of `rootRadius` about (tip + rootRadius, 0) that both flanks touch, `touchRad` round from +x.
 */
export interface NotchShape {
  readonly tip: number;
  readonly outer: number;
  readonly halfMouth: number;
  readonly rootRadius: number;
  readonly touchRad: number;
}

/** Undefined where the chord of its width lies inside its depth: there is no such notch. */
export function notchShape(
  { width, depth }: Pick<Notch, 'width' | 'depth'>,
  radius: number,
): NotchShape | undefined {
  const outer = Math.sqrt(Math.max(0, radius ** 2 - (width / 2) ** 2));
  const tip = radius - depth;
  const deep = outer - tip;
  if (!(deep > 0 && depth < radius)) return undefined;
  // No wider than the mouth, or the flanks would lean inward.
  const rootRadius = Math.min(rootShare * deep, width / 2);
  const [ahead, aside] = [deep - rootRadius, width / 2];
  const touchRad = Math.atan2(aside, ahead) + Math.acos(rootRadius / Math.hypot(ahead, aside));
  return { tip, outer, halfMouth: width / 2, rootRadius, touchRad };
}

/** Its outline, counter-clockwise; the flanks go on straight to `beyond` mm past the mouth. */
export function notchOutline(
  { tip, outer, halfMouth, rootRadius, touchRad }: NotchShape,
  beyond = 0,
  chordError = defaultChordError,
): (readonly [number, number])[] {
  // In two halves, so that its deepest point is a corner.
  const root = [
    [touchRad, Math.PI],
    [Math.PI, 2 * Math.PI - touchRad],
  ].flatMap(([from, to], half) =>
    arcPoints([tip + rootRadius, 0], rootRadius, from, to, chordError).slice(half),
  );
  const [x, y] = root[0];
  const half = halfMouth + (beyond * (halfMouth - y)) / (outer - x);
  return [[outer + beyond, -half], [outer + beyond, half], ...root];
}
