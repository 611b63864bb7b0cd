import { type Finding, finding, type TextPlace } from '../findings/index.ts';
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
  for (const kind of ['gate', 'vent'] as const) {
    for (const { placement, spec, at } of channelsWanted(plan, kind)) {
      const one = placed.find(({ id }) => id === placement);
      if (!one) continue;
      const channel =
        kind === 'vent'
          ? straightVent(one, plan.disc.diameter / 2, spec)
          : sprue && straightGate(one, sprue.wellRadius, spec);
      if (channel) channels.push(channel);
      else findings.push(noChannel(kind, one, sprue !== undefined, at));
    }
  }
  return { channels, findings };
}

function noChannel(kind: Channel['kind'], one: PlacedMaster, hasSprue: boolean, at: TextPlace): Finding {
  return finding('layout.no-channel', {
    subject: one.id,
    place: [one.x, one.y, 0],
    values: { which: kind === 'gate' && !hasSprue ? 'no-sprue' : 'missed', kind },
    at,
  });
}

/** A gate or vent that the plan asks for; where it only says `straight`, its place in the text is the placement's. */
interface Wanted {
  readonly placement: string;
  readonly spec: ChannelSpec;
  readonly at: TextPlace;
}

/** By the plan's entries, within one in the order of the placements. */
export function channelsWanted(plan: Plan, kind: Channel['kind']): Wanted[] {
  const section = kind === 'gate' ? plan.gates : plan.vents;
  if (section === undefined) return [];
  const usual: ChannelSpec = channelDefaults[kind];
  const flat = expandPlacements(plan);
  if (section === 'straight') return flat.map(({ id, at }) => ({ placement: id, spec: usual, at }));
  return section.flatMap((entry: PlanChannel) => {
    const ids = new Set(entry.placements.flatMap((name) => placementsNamed(flat, name)));
    const { width = usual.width, depth = usual.depth } = entry;
    const spec = {
      width,
      depth,
      endWidth: entry.endWidth ?? width,
      endDepth: entry.endDepth ?? depth,
      section: entry.section ?? usual.section,
      half: entry.half ?? usual.half,
      ...('joins' in entry && entry.joins && { joins: true as const }),
    };
    return flat.filter(({ id }) => ids.has(id)).map(({ id }) => ({ placement: id, spec, at: entry.at }));
  });
}
