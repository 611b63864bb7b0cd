/** A stretch of the rim that something stands near: its middle and half width, rad. */
export interface RimStretch {
  readonly angleRad: number;
  readonly halfRad: number;
}

const fullTurn = 2 * Math.PI;
const wrapTurn = (angle: number): number => ((angle % fullTurn) + fullTurn) % fullTurn;

/**
 * The middle of the widest arc of the rim that no stretch touches, and its width, rad; among equals the first from
 * angle 0. With nothing on the rim the whole turn is free and the middle is taken opposite the index mark.
 */
export function widestFreeArc(taken: readonly RimStretch[]): { angleRad: number; widthRad: number } {
  if (taken.length === 0) return { angleRad: Math.PI, widthRad: fullTurn };
  const stretches = taken
    .map(({ angleRad, halfRad }) => ({ start: wrapTurn(angleRad - halfRad), width: 2 * halfRad }))
    .sort((a, b) => a.start - b.start);
  let best = { angleRad: 0, widthRad: Number.NEGATIVE_INFINITY };
  let covered = Number.NEGATIVE_INFINITY;
  for (const { start, width } of stretches) covered = Math.max(covered, start + width - fullTurn);
  for (const { start, width } of stretches) {
    const from = covered === Number.NEGATIVE_INFINITY ? start : covered;
    if (start - from > best.widthRad + 1e-12)
      best = { angleRad: wrapTurn((from + start) / 2), widthRad: start - from };
    covered = Math.max(covered, start + width);
  }
  const first = (stretches[0]?.start ?? 0) + fullTurn;
  if (first - covered > best.widthRad + 1e-12) {
    best = { angleRad: wrapTurn((covered + first) / 2), widthRad: first - covered };
  }
  return { angleRad: best.angleRad, widthRad: Math.max(0, best.widthRad) };
}
