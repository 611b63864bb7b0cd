import {
  notchDefaults,
  type PlaceAngle,
  type Plan,
  resolveAngle,
  resolveSize,
  type Size,
  tabDefaults,
} from '../plan/index.ts';
import { type RimStretch, widestFreeArc } from './free-arc.ts';
import type { Boss, Notch, Placement, Tab } from './mold.ts';
import { bossReach } from './shapes/index.ts';

interface Named {
  readonly id?: string | undefined;
}

export const tabId = ({ id }: Named, index: number): string => id ?? `tab-${index + 1}`;
export const notchId = ({ id }: Named, index: number): string => id ?? `notch-${index + 1}`;

/** Tabs and notches; one whose angle the plan leaves open goes to the middle of the widest free arc of the rim. */
export function resolveRim(
  plan: Plan,
  bosses: readonly Boss[],
  placements: readonly Placement[],
): { tabs: Tab[]; notches: Notch[] } {
  const radius = plan.disc.diameter / 2;
  const spread = (size: Size | undefined): number | undefined => resolveSize(size, plan.disc.diameter);
  const taken: RimStretch[] = [...bosses.map(stretchOfBoss), ...placements.map(stretchOfPlacement)];
  const resolve = <T extends Tab | Notch>(
    item: Omit<T, 'angleRad'> & { width: number },
    asked: PlaceAngle | undefined,
  ) => {
    const angle = asked === undefined ? widestFreeArc(taken).angleRad : resolveAngle(asked, plan);
    taken.push({ angleRad: angle, halfRad: item.width / 2 / radius });
    return { ...item, angleRad: angle } as T;
  };
  const tabs = (plan.tabs ?? []).map((spec, index) =>
    resolve<Tab>(
      {
        id: tabId(spec, index),
        width: spread(spec.width) ?? tabDefaults.width,
        length: spread(spec.length) ?? tabDefaults.length,
        height: spec.height ?? tabDefaults.height,
        inset: spec.inset ?? tabDefaults.inset,
      },
      spec.angleRad,
    ),
  );
  const notches = (plan.notches ?? []).map((spec, index) =>
    resolve<Notch>(
      {
        id: notchId(spec, index),
        width: spread(spec.width) ?? notchDefaults.width,
        depth: spread(spec.depth) ?? notchDefaults.depth,
      },
      spec.angleRad,
    ),
  );
  return { tabs, notches };
}

const seenFromAxis = (x: number, y: number, reach: number): RimStretch => {
  const far = Math.hypot(x, y);
  return { angleRad: Math.atan2(y, x), halfRad: far > reach ? Math.asin(reach / far) : Math.PI };
};

const stretchOfBoss = (boss: Boss): RimStretch => seenFromAxis(boss.x, boss.y, bossReach(boss));

const stretchOfPlacement = ({ x, y, reach }: Placement): RimStretch => seenFromAxis(x, y, reach);
