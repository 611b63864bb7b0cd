import { type Finding, finding } from '../findings/index.ts';
import type { Point2 } from '../geometry/index.ts';
import { type Plan, partingDefaults } from '../plan/index.ts';
import { type Memoize, makeAlways } from './memoize.ts';
import type { Boss, Disc, Notch, Process, Sprue, Tab } from './mold.ts';
import { findPartingSurface, type Pin } from './parting/index.ts';
import { flatPartingSurface, type PartingSurface } from './parting-surface.ts';
import type { PlacedMaster } from './resolve-placements.ts';
import { bossReach, bossSpace, sprueSpace, tabCorners } from './shapes/index.ts';

/** Everything the surface must stay flat at. */
export interface Fixed {
  readonly process: Process;
  readonly disc: Disc;
  readonly sprue: Sprue | undefined;
  readonly bosses: readonly Boss[];
  readonly tabs: readonly Tab[];
  readonly notches: readonly Notch[];
}

/** Level ground round a fixed thing, mm, so that its edge is not cut by a slope. */
const levelMargin = 1;
/** Level ring inside the rim, mm: the halves seal on it. */
const levelRim = 4;
/** Grid nodes beyond which the field and its sweeps would need more than about 1 GB. */
const mostNodes = 25e6;

/** The parting surface the plan asks for: flat, or following the masters' widest contours. */
export function resolveParting(
  plan: Plan,
  placed: readonly PlacedMaster[],
  fixed: Fixed,
  memoize: Memoize = makeAlways,
): { surface: PartingSurface; findings: readonly Finding[] } {
  const { parting } = plan;
  const { disc } = fixed;
  if ((parting?.surface ?? partingDefaults.surface) === 'flat' || placed.length === 0) {
    return { surface: flatPartingSurface(disc.radius), findings: [] };
  }
  const wished = parting?.cell ?? partingDefaults.cell;
  const cell = Math.max(wished, (2 * disc.radius) / Math.sqrt(mostNodes));
  const input = {
    discRadius: disc.radius,
    masters: placed,
    pins: pinsOf(fixed),
    slopeRad: parting?.slopeRad ?? partingDefaults.slopeRad,
    limitUp: parting?.limit?.up ?? partingDefaults.limitShare * disc.upper,
    limitDown: parting?.limit?.down ?? partingDefaults.limitShare * disc.lower,
    cell,
  };
  // Only what the surface is found from: a placement's place in the plan's text is no part of it.
  const masters = placed.map(({ id, mesh }) => ({ id, mesh }));
  const { surface, findings } = memoize('parting', { ...input, masters }, () => findPartingSurface(input));
  return { surface, findings: cell > wished ? [...findings, tooFine(wished, cell)] : findings };
}

const tooFine = (wished: number, cell: number): Finding =>
  finding('layout.too-fine', {
    subject: 'parting',
    values: { measured: cell, limit: wished },
  });

/** Level ground round what each takes, or as far as that reaches where it reaches farther. */
export function pinsOf({ process, disc, sprue, bosses, tabs, notches }: Fixed): Pin[] {
  const onRim = (angleRad: number, depth: number, width: number, corners: readonly Point2[]): Pin => {
    const middle = disc.radius - depth / 2;
    const [x, y] = [middle * Math.cos(angleRad), middle * Math.sin(angleRad)];
    const reach = corners.map(([u, v]) => Math.hypot(u - x, v - y));
    return { x, y, radius: Math.max(Math.hypot(depth, width) / 2 + levelMargin, ...reach) };
  };
  return [
    { outside: disc.radius - levelRim },
    ...(sprue ? [{ x: 0, y: 0, radius: sprueSpace(sprue).reach + levelMargin }] : []),
    ...bosses.map((boss) => ({
      x: boss.x,
      y: boss.y,
      radius: Math.max(bossReach(boss) + levelMargin, bossSpace(boss, process).reach),
    })),
    ...tabs.map((tab) =>
      onRim(tab.angleRad, tab.inset + tab.length, tab.width, tabCorners(tab, disc.radius).slice(2)),
    ),
    ...notches.map(({ angleRad, depth, width }) => onRim(angleRad, depth, width, [])),
  ];
}
