import { type Finding, finding } from '../findings/index.ts';
import { boundsOf, moveMesh, type TriangleMesh } from '../geometry/index.ts';
import {
  expandPlacements,
  type FlatPlacement,
  type Plan,
  type PlanMaster,
  resolveRadius,
  shrinkDefaults,
} from '../plan/index.ts';
import { masterOf } from './master-of.ts';
import { type Memoize, makeAlways } from './memoize.ts';
import type { Master, Placement } from './mold.ts';
import {
  type Lie,
  type OrientedMaster,
  orientMaster,
  placingMatrix,
  type Sink,
  sinkDepth,
} from './orient-master.ts';

/** Parts of a millimeter that a sink may miss a face by and still count as touching it. */
const touching = 1e-6;

export interface PlacedMaster extends Placement {
  /** The master's mesh in the mold frame. */
  readonly mesh: TriangleMesh;
}

/** Every placement in the mold frame. A master wholly on one side of the plane is a stop;
 * whether it stays inside the rim is the wall check's to say. */
export function resolvePlacements(
  plan: Plan,
  masters: readonly Master[],
  memoize: Memoize = makeAlways,
): { placed: PlacedMaster[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const bases = new Map<string, Base>();
  const placed = expandPlacements(plan).map((flat) => {
    const base = bases.get(flat.master) ?? baseOf(plan, masterOf({ masters }, flat), memoize);
    bases.set(flat.master, base);
    const one = place(plan, flat, base);
    findings.push(...judge(one));
    return one;
  });
  return { placed, findings };
}

/** A master as all its placements have it. */
interface Base {
  readonly master: Master;
  readonly oriented: OrientedMaster;
  readonly scale: number;
  readonly sink: Sink;
}

function baseOf(plan: Plan, master: Master, memoize: Memoize): Base {
  const spec = plan.masters?.[master.id];
  if (!spec) throw new Error(`layout: master ${master.id} is not in the plan`);
  const { mesh } = master;
  const scale = scaleOf(plan, spec);
  const lie = lieOf(spec);
  const oriented = memoize('lie', { mesh, lie, scale }, () => orientMaster(mesh, lie, scale));
  return { master, oriented, scale, sink: usualSink(spec, scale) };
}

/**
 * How much larger than the casting wanted a master lies in the mold, so that this comes out as large: shrinks compound, 1 / ((1 - a)(1 - b)), b being the rubber's or, for rigid halves, the making process's own.
 */
function scaleOf(plan: Plan, spec: PlanMaster): number {
  if (spec.allowance === 'included') return 1;
  const alloy = plan.shrink?.alloy ?? shrinkDefaults.alloy;
  const other = plan.process === 'rigid' ? plan.fixture?.compensation : plan.shrink?.rubber;
  return 1 / ((1 - alloy) * (1 - (other ?? shrinkDefaults.rubber)));
}

/** How a master of the plan is turned before it is placed. */
export const lieOf = (spec: PlanMaster): Lie => {
  const lie = spec.kind === 'mesh' ? spec.lie : undefined;
  return { xRad: lie?.xRad ?? 0, yRad: lie?.yRad ?? 0, zRad: lie?.zRad ?? 0 };
};

const usualSink = (spec: PlanMaster, scale: number): Sink =>
  spec.kind === 'stand-in' ? { depth: spec.below * scale } : 'silhouette';

function place(plan: Plan, flat: FlatPlacement, base: Base): PlacedMaster {
  const radius = resolveRadius(flat.radius, plan.disc.diameter / 2);
  const depth = sinkDepth(base.oriented, flat.sink ?? base.sink);
  const matrix = placingMatrix(base.oriented, {
    radius,
    angleRad: flat.angleRad,
    turnRad: flat.turnRad,
    depth,
  });
  const mesh = moveMesh(base.master.mesh, matrix);
  const { min, max } = boundsOf(mesh.positions);
  return {
    id: flat.id,
    master: flat.master,
    x: radius * Math.cos(flat.angleRad),
    y: radius * Math.sin(flat.angleRad),
    turnRad: flat.turnRad,
    scale: base.scale,
    matrix,
    lowest: min[2],
    highest: max[2],
    reach: base.oriented.reach,
    estimated: base.master.estimated,
    mesh,
  };
}

function judge({ id, lowest, highest, x, y }: PlacedMaster): Finding[] {
  const findings: Finding[] = [];
  if (lowest > touching || highest < -touching) {
    const above = lowest > touching;
    findings.push(
      finding('layout.sunk-under', {
        subject: id,
        place: [x, y, above ? lowest : highest],
        values: {
          measured: above ? lowest : -highest,
          limit: 0,
          side: above ? 'above' : 'below',
        },
      }),
    );
  }
  return findings;
}
