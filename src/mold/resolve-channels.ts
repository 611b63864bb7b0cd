import { type Finding, finding } from '../findings/index.ts';
import {
  channelDefaults,
  expandPlacements,
  type Plan,
  type PlanChannel,
  placementsNamed,
} from '../plan/index.ts';
import { type ChannelSpec, straightGate, straightVent } from './channels.ts';
import type { Channel, Sprue } from './mold.ts';
import type { PlacedMaster } from './resolve-placements.ts';

/** Gates and vents for the placements the plan names; one that cannot be drawn straight is a finding. */
export function resolveChannels(
  plan: Plan,
  placed: readonly PlacedMaster[],
  sprue: Sprue | undefined,
): { channels: Channel[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const channels: Channel[] = [];
  const add = (kind: Channel['kind'], one: PlacedMaster, spec: ChannelSpec) => {
    const channel =
      kind === 'vent'
        ? straightVent(one, plan.disc.diameter / 2, spec)
        : sprue && straightGate(one, sprue.wellRadius, spec);
    if (channel) channels.push(channel);
    else findings.push(noChannel(kind, one, sprue !== undefined, spec));
  };
  for (const kind of ['gate', 'vent'] as const) {
    for (const { one, spec } of wanted(plan, kind, placed)) add(kind, one, spec);
  }
  return { channels, findings };
}

function noChannel(
  kind: Channel['kind'],
  one: PlacedMaster,
  hasSprue: boolean,
  { at }: ChannelSpec,
): Finding {
  const place = at ?? one.at;
  return finding('layout.no-channel', {
    subject: one.id,
    place: [one.x, one.y, 0],
    values: { which: kind === 'gate' && !hasSprue ? 'no-sprue' : 'missed', kind },
    ...(place && { at: place }),
  });
}

function wanted(plan: Plan, kind: Channel['kind'], placed: readonly PlacedMaster[]) {
  const section = kind === 'gate' ? plan.gates : plan.vents;
  if (section === undefined) return [];
  const usual = channelDefaults[kind];
  if (section === 'straight') return placed.map((one) => ({ one, spec: usual as ChannelSpec }));
  const flat = expandPlacements(plan);
  return section.flatMap((entry: PlanChannel) => {
    const ids = new Set(entry.placements.flatMap((name) => placementsNamed(flat, name)));
    const spec: ChannelSpec = {
      width: entry.width ?? usual.width,
      depth: entry.depth ?? usual.depth,
      half: entry.half ?? usual.half,
      at: entry.at,
    };
    return placed.filter(({ id }) => ids.has(id)).map((one) => ({ one, spec }));
  });
}
