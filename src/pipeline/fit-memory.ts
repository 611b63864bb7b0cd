import { type Finding, finding } from '../findings/index.ts';
import { triangleCount } from '../geometry/index.ts';
import { type Kernel, movedBySimplify } from '../kernel/index.ts';
import { measureMesh } from '../mesh/index.ts';
import type { Master } from '../mold/index.ts';
import { expandPlacements, type Plan } from '../plan/index.ts';

/**
 * Memory the kernel takes at most while both halves are cut, bytes for each triangle of a master at each of its
 * placements: measured with `npx tsx bench/memory.ts`, 487 to 548 for a flat parting surface, 612 to 616 for a curved one.
 */
const bytesPerTriangle = 640;
/** Three of the 4 GiB that a kernel with 32-bit addresses can have: the rest is for fixtures and for its growing in steps. */
const room = 3 * 2 ** 30;

/** Most triangles of masters, each counted at each of its placements, that the kernel is fed: 5.0 million. */
export const mostPlacedTriangles = Math.floor(room / bytesPerTriangle);

/** Farthest a surface is moved where the plan does not say, mm: below it the eye sees no change (common practice, no published source). */
const usualCoarsening = 0.02;
/** Shares of that which are tried, least first. */
const shares = [0.25, 0.5, 1];

export interface Fitted {
  /** Left out where they do not fit even as coarse as they may be made; the findings then hold a stop. */
  readonly masters?: readonly Master[];
  readonly findings: readonly Finding[];
}

/**
 * Masters of as many triangles as the kernel has memory for: told before it is fed, from the triangles of each master
 * times its placements. Where they are too many, meshes are made coarser, all by the same error, the least of a few
 * that will do, and no more than the plan allows. Masters that fit come back as they are.
 */
export function fitMemory(
  plan: Plan,
  masters: readonly Master[],
  kernel: Kernel,
  most = mostPlacedTriangles,
): Fitted {
  const times = placementsOf(plan);
  const placed = (list: readonly Master[]): number =>
    list.reduce((sum, { id, mesh }) => sum + triangleCount(mesh) * (times.get(id) ?? 0), 0);
  const wanted = placed(masters);
  if (wanted <= most) return { masters, findings: [] };
  const allowed = plan.limits?.coarsening ?? usualCoarsening;
  let left = wanted;
  for (const error of allowed > 0 ? shares.map((share) => share * allowed) : []) {
    const coarser = masters.map((one) => (times.has(one.id) ? coarsened(one, error, kernel) : one));
    left = placed(coarser);
    if (left > most) continue;
    return {
      masters: coarser,
      findings: masters.flatMap((one, i) => told(one, coarser[i], { error, wanted, most })),
    };
  }
  const heaviest = masters.toSorted((a, b) => placed([b]) - placed([a]))[0];
  const values = { measured: wanted, limit: most, left, allowed, times: times.get(heaviest.id) ?? 0 };
  return { findings: [finding('repair.memory', { subject: heaviest.id, values })] };
}

function placementsOf(plan: Plan): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const { master } of expandPlacements(plan)) times.set(master, (times.get(master) ?? 0) + 1);
  return times;
}

/** Moved by no more than `error` mm. Stand-ins are coarse as they are. */
function coarsened(master: Master, error: number, kernel: Kernel): Master {
  if (master.kind === 'stand-in') return master;
  const mesh = kernel.scope((scope) =>
    scope.toMesh(scope.simplify(scope.fromExactMesh(master.mesh, master.id), error / movedBySimplify(1))),
  );
  return { ...master, mesh, measures: measureMesh(mesh) };
}

function told(
  { id, mesh: before }: Master,
  { mesh: after }: Master,
  { error, wanted, most }: { readonly error: number; readonly wanted: number; readonly most: number },
): Finding[] {
  if (before === after) return [];
  const values = { measured: triangleCount(before), left: triangleCount(after), error, wanted, limit: most };
  return [finding('repair.coarsened', { subject: id, values })];
}
