import { type Sprue, shaftRadius, wellFloorRadius } from '../mold/index.ts';
import type { Well } from '../physics/index.ts';

/** Radius of the pouring hole at the outer face of the upper half, `upper` mm thick. */
export const pouringRadius = (sprue: Sprue, upper: number): number => shaftRadius(sprue, upper);

/** The well and the pouring hole over it as room for metal; its small fillets are left out. */
export function metalWell(sprue: Sprue, upper: number): Well {
  const { holeRadius, wellRadius, wellDepth, draftRad, domeRadius: a, domeHeight: h } = sprue;
  const slope = Math.tan(draftRad);
  const [floor, top] = [wellFloorRadius(sprue), pouringRadius(sprue, upper)];
  const hasDome = a > 0 && h > 0;
  const ball = hasDome ? (a * a + h * h) / (2 * h) : 0;
  return {
    radius: wellRadius,
    corners: [...(hasDome ? [a] : []), floor, top, holeRadius].filter((r) => r > 0 && r < wellRadius),
    floorAt: (r) => {
      if (hasDome && r < a) return h - ball + Math.sqrt(ball * ball - r * r) - wellDepth;
      return r <= floor ? -wellDepth : -(wellRadius - r) / slope;
    },
    ceilingAt: (r) => {
      if (r > holeRadius) return 0;
      return r <= top ? upper : (holeRadius - r) / slope;
    },
  };
}
