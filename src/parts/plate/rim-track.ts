import { type Corner, circle, type Path, type Point2 } from '../../geometry/index.ts';

/** A notch in a round edge: `width` along the chord, `depth` inward (V); of a round one the depth is half the width. */
export interface RimCut {
  readonly angleRad: number;
  readonly width: number;
  readonly shape: 'V' | 'round';
  readonly depth: number;
}

/** Index mark of flat fixtures: a V in the edge at angle 0, as deep as leaves half the room (mm) behind it. */
export const indexCut = (room: number): RimCut => ({
  angleRad: 0,
  width: 4,
  shape: 'V',
  depth: Math.max(1, Math.min(3, room / 2)),
});

const turn = 2 * Math.PI;
const onward = (angle: number): number => angle - turn * Math.floor(angle / turn);

/** A round edge about the origin with notches, counter-clockwise; a notch that meets an earlier one is left out. */
export function rimTrack(radius: number, cuts: readonly RimCut[]): Path {
  const half = ({ width }: RimCut): number => Math.asin(width / 2 / radius);
  const apart = (a: RimCut, b: RimCut): boolean => {
    const gap = onward(a.angleRad - b.angleRad);
    return Math.min(gap, turn - gap) > half(a) + half(b);
  };
  const kept = cuts
    .filter((cut, i) => cuts.slice(0, i).every((other) => apart(cut, other)))
    .map((cut) => ({ ...cut, angleRad: onward(cut.angleRad) }))
    .sort((a, b) => a.angleRad - b.angleRad);
  if (kept.length === 0) return circle([0, 0], radius);
  const at = (angle: number, r = radius): Point2 => [r * Math.cos(angle), r * Math.sin(angle)];
  const corners = kept.flatMap((cut, i): Corner[] => {
    const next = kept[(i + 1) % kept.length];
    const to = cut.angleRad + half(cut);
    const rest = kept.length === 1 ? turn - 2 * half(cut) : onward(next.angleRad - half(next) - to);
    const end: Corner = { at: at(to), bulge: Math.tan(rest / 4) };
    const start = at(cut.angleRad - half(cut));
    return cut.shape === 'round'
      ? [{ at: start, bulge: -1 }, end]
      : [{ at: start }, { at: at(cut.angleRad, radius - cut.depth) }, end];
  });
  return { kind: 'track', closed: true, corners };
}
