import { boundsOf } from '../../src/geometry/index.ts';
import type { Body, Scope } from '../../src/kernel/index.ts';

/** What has to fill a disc without gap or overlap, all in the mold frame. */
export interface ClosedMold {
  /** The disc before anything was cut out of it. */
  readonly disc: Body;
  readonly lower: Body;
  readonly upper: Body;
  readonly masters: readonly { readonly id: string; readonly body: Body }[];
  /** Whatever else was cut out on purpose: sprue, bosses, channels, notches. */
  readonly others: readonly Body[];
}

/** How a master sits in the closed halves: volume (mm3) it shares with them, and volume round it that nothing fills. */
export interface Fit {
  readonly id: string;
  readonly overlap: number;
  readonly gap: number;
}

/**
 * Measures the closed mold with the kernel's volumes. A gap counts for the master whose box is nearest to it.
 */
export function measureFit(scope: Scope, mold: ClosedMold): Fit[] {
  const { disc, lower, upper, masters, others } = mold;
  const filled = scope.unite([lower, upper, ...masters.map(({ body }) => body), ...others], 'closed mold');
  const [, left] = scope.split(disc, filled, 'gaps');
  const boxes = masters.map(({ body }) => boundsOf(scope.toMesh(body).positions));
  const gaps = new Float64Array(masters.length);
  for (const piece of left.isEmpty() ? [] : scope.pieces(left, 'gaps')) {
    const { min, max } = boundsOf(scope.toMesh(piece).positions);
    const distances = boxes.map((box) =>
      Math.hypot(...[0, 1, 2].map((k) => Math.max(0, box.min[k] - max[k], min[k] - box.max[k]))),
    );
    const nearest = distances.indexOf(Math.min(...distances));
    if (nearest >= 0) gaps[nearest] += piece.volume();
  }
  return masters.map(({ id, body }, i) => {
    const shared = [lower, upper].map((half) => scope.intersect([half, body], id).volume());
    return { id, overlap: shared[0] + shared[1], gap: gaps[i] };
  });
}
