import { type Finding, finding } from '../../findings/index.ts';
import { inverse, type Matrix4, movePoint, type Point2, type TriangleMesh } from '../../geometry/index.ts';
import { treeOf } from '../../mesh/index.ts';
import {
  type Channel,
  type Check,
  check,
  cutRun,
  heightAt,
  isDrawn,
  masterOf,
  type PartingSurface,
  type Placement,
  runLength,
} from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';

interface OpenInput {
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  /** Where each channel of the cavity should open into it: points of its section, mold frame. */
  readonly ends: readonly {
    readonly channel: {
      readonly id: string;
      readonly kind: 'gate' | 'vent';
      readonly placement: string;
    };
    readonly points: readonly (readonly [number, number, number])[];
  }[];
}

/** How far from the surface a cavity on its other side alone is looked for, mm. */
const justBeyond = 0.02;
/** Parts of a millimeter by which a master may miss the plane and still count as touching it. */
const touching = 1e-6;

/** Whether each gate and vent opens into the cavity it is for: the shadow it was drawn to may lie over or under it. */
export const channelsOpen: Check = check<OpenInput>({
  id: 'channels-open',
  title: 'Gates and vents that open into their cavities',
  follows: false,
  processes: everyProcess,
  units: (mold) =>
    mold.placements.filter(isSunk).flatMap((placement) => {
      const ends = mold.channels.flatMap((channel) => {
        const { id, kind, placement: whose } = channel;
        if (whose !== placement.id || !isDrawn(channel) || !(kind === 'gate' || kind === 'vent')) return [];
        return [{ channel: { id, kind, placement: whose }, points: endPoints(channel, mold.parting) }];
      });
      if (ends.length === 0) return [];
      const { mesh } = masterOf(mold, placement);
      return [
        { subject: placement.id, about: [placement.id], input: { mesh, matrix: placement.matrix, ends } },
      ];
    }),
  run: ({ mesh, matrix, ends }) => {
    const tree = treeOf(mesh);
    const toMaster = inverse(matrix);
    const isInside = (point: readonly [number, number, number]): boolean =>
      tree.windingAt(...movePoint(toMaster, [...point])) > 0.5;
    return { findings: ends.filter(({ points }) => !points.some(isInside)).map(missing) };
  },
});

/** One wholly on one side of the plane has a stop of its own. */
const isSunk = ({ lowest, highest }: Placement): boolean => lowest <= touching && highest >= -touching;

function missing({ channel: { id, kind, placement }, points }: OpenInput['ends'][number]): Finding {
  const values = { kind, placement } as const;
  return finding('channels.misses', { subject: id, place: points[0], values });
}

/** Across and down its section all along where it laps into the cavity, and just beyond the surface. */
function endPoints(
  { run, laps, kind, half }: Channel,
  surface: PartingSurface,
): OpenInput['ends'][number]['points'] {
  const length = runLength(run);
  const lap = kind === 'gate' ? cutRun(run, length - laps[1], length) : cutRun(run, 0, laps[0]);
  const down = half === 'lower' ? -1 : 1;
  const [first, last] = [lap[0], lap[lap.length - 1]];
  if (!first || !last) return [[...run[0].at, 0]];
  return [0.05, 0.25, 0.5, 0.75, 0.95].flatMap((t) => {
    const [x, y]: Point2 = [
      first.at[0] + (last.at[0] - first.at[0]) * t,
      first.at[1] + (last.at[1] - first.at[1]) * t,
    ];
    const z = heightAt(surface, x, y);
    const depths = [-justBeyond, justBeyond, ...[0.25, 0.5, 0.9].map((share) => share * last.depth)];
    return depths.map((depth) => [x, y, z + down * depth] as const);
  });
}
