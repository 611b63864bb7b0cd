/** A point seen from above, mm. */
export type Point = readonly [number, number];

/** A dovetail across a seam: middle at `radius` along it, mm. The tongue is on the sector before the seam. */
export interface Joint {
  readonly radius: number;
  readonly neck: number;
  readonly depth: number;
}

/** How much wider the tongue gets on each side, mm per mm of depth: about 18 degrees, held by itself. */
const flare = 1 / 3;

/**
 * Outline of the tongue (grown by `gap` on each side, for its socket) on a seam that leaves the axis at `angleRad`,
 * counter-clockwise. It starts `neck` before the seam, in its own sector.
 */
export function tongue({ radius, neck, depth }: Joint, angleRad: number, gap = 0): Point[] {
  const wider = gap * Math.hypot(1, flare);
  const half = (v: number): number => neck / 2 + flare * Math.max(0, v) + wider;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const at = (u: number, v: number): Point => [(radius + u) * c - v * s, (radius + u) * s + v * c];
  const end = depth + gap;
  return [
    at(-half(-neck), -neck),
    at(half(-neck), -neck),
    at(half(0), 0),
    at(half(end), end),
    at(-half(end), end),
    at(-half(0), 0),
  ];
}

/** The sector between two angles (the second greater), out to `far`, counter-clockwise. */
export function sector(fromRad: number, toRad: number, far: number): Point[] {
  const steps = Math.max(2, Math.ceil((toRad - fromRad) / 0.5));
  const arc = Array.from({ length: steps + 1 }, (_, k): Point => {
    const angle = fromRad + ((toRad - fromRad) * k) / steps;
    return [far * Math.cos(angle), far * Math.sin(angle)];
  });
  return [[0, 0], ...arc];
}
