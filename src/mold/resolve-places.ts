import { expandPlacements, type Plan } from '../plan/index.ts';
import { pocketId } from './channel-ways/slowing-pocket.ts';
import type { Mold } from './mold.ts';
import { expandBosses } from './resolve-bosses.ts';
import { channelsWanted } from './resolve-channels.ts';
import { pinsWanted } from './resolve-pins.ts';
import { notchId, tabId } from './resolve-rim.ts';
import { runnerIds } from './resolve-runners.ts';

const benchSections = [
  'can',
  'closing',
  'machine',
  'rubber',
  'alloy',
  'spin',
  'cure',
  'pouring',
  'order',
  'prices',
] as const;

/** Where all that the plan names or makes stands in its text; of things of one id the place of the later kind. */
export function resolvePlaces(plan: Plan): Mold['places'] {
  const sections = benchSections.map((id) => ({ id, at: plan[id]?.at }));
  const masters = Object.entries(plan.masters ?? {}).map(([id, { at }]) => ({ id, at }));
  const channels = (['gate', 'vent'] as const).flatMap((kind) =>
    channelsWanted(plan, kind).flatMap(({ id, at, slow }) => [
      { id, at },
      ...(slow === undefined ? [] : [{ id: pocketId(id), at }]),
    ]),
  );
  const runners = (plan.runners ?? []).flatMap((one) => runnerIds(one).map((id) => ({ id, at: one.at })));
  const notches = (plan.notches ?? []).map((spec, i) => ({ id: notchId(spec, i), at: spec.at }));
  const tabs = (plan.tabs ?? []).map((spec, i) => ({ id: tabId(spec, i), at: spec.at }));
  const bosses = expandBosses(plan).map(({ id, spec }) => ({ id, at: spec.at }));
  const all = [
    ...sections,
    ...masters,
    ...runners,
    ...channels,
    ...pinsWanted(plan).map(({ id, spec }) => ({ id, at: spec.at })),
    ...notches,
    ...tabs,
    ...bosses,
    ...expandPlacements(plan),
    { id: 'sprue', at: plan.sprue?.at },
  ];
  return Object.fromEntries(all.flatMap(({ id, at }) => (at ? [[id, at] as const] : [])));
}
