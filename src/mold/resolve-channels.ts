import { type Finding, finding, type TextPlace } from '../findings/index.ts';
import { ringArea, silhouette } from '../mesh/index.ts';
import {
  type ChannelEntry,
  type ChannelPath,
  channelDefaults,
  expandPlacements,
  type Plan,
  type PlanChannel,
  placementsNamed,
} from '../plan/index.ts';
import { type Drawn, drawChannel, type Ground } from './channel-ways/draw.ts';
import type { EntryTarget } from './channel-ways/entry.ts';
import { fixtureOutlines } from './channel-ways/fixture-outlines.ts';
import { type Land, withLand } from './channel-ways/land.ts';
import { type ChannelSpec, channelId, straightGate, straightVent } from './channels.ts';
import type { Memoize } from './memoize.ts';
import type { Channel, Mold, Sprue } from './mold.ts';
import type { PlacedMaster } from './resolve-placements.ts';
import { resolveRunners } from './resolve-runners.ts';
import { channelOutline, isDrawn } from './shapes/index.ts';

/** Grid of the outlines that channels open into and go round, mm: a knife is wider than what it may miss. */
const outlineCell = 0.2;

/** What is in the mold before its channels. */
export interface ChannelGround
  extends Pick<Mold, 'process' | 'disc' | 'bosses' | 'tabs' | 'notches' | 'bench'> {
  readonly sprue: Sprue | undefined;
  readonly placed: readonly PlacedMaster[];
  readonly wall: number;
}

/**
 * Runners, and gates and vents for the placements the plan names; what keeps one from being drawn is a finding. `already` are drawn, and
 * stay as they are.
 */
export function resolveChannels(
  plan: Plan,
  ground: ChannelGround,
  memoize: Memoize,
  already: readonly Channel[] = [],
): { channels: Channel[]; findings: Finding[] } {
  const wanted = (['gate', 'vent'] as const).flatMap((kind) => channelsWanted(plan, kind));
  const runners = resolveRunners(plan, ground);
  const findings: Finding[] = [...runners.findings];
  const done = new Map([...runners.channels, ...already].map((channel) => [channel.id, channel]));
  const pockets = new Map<string, Channel>();
  const targetOf = targets(memoize);
  // Those that look for their way go round the others, and round those that were found before.
  const searching = [
    ...wanted.filter(({ path }) => path !== 'routed'),
    ...wanted.filter(({ path }) => path === 'routed'),
  ];
  // What leads out of another channel comes after it, however they are listed; what is left has none, or only itself.
  const inTurn = byParents(searching);
  for (const one of inTurn) {
    if (done.has(one.id)) continue;
    const placed = ground.placed.find(({ id }) => id === one.placement);
    if (!placed) continue;
    const made = isSpoke(one)
      ? spoke(one, placed, ground)
      : drawn(plan, one, placed, { ground, targetOf, done, memoize });
    findings.push(...made.findings);
    if (made.channel) done.set(one.id, one.land ? withLand(made.channel, one.land) : made.channel);
    if (made.pocket) pockets.set(one.id, made.pocket);
  }
  const drawnChannels = wanted.flatMap(({ id }) =>
    [done.get(id), pockets.get(id)].filter((one) => one !== undefined),
  );
  return { channels: [...runners.channels, ...drawnChannels], findings };
}

/** Each after the one it leads out of or into. */
function byParents(wanted: readonly Wanted[]): Wanted[] {
  const ordered: Wanted[] = [];
  let left = wanted;
  while (left.length > 0) {
    const waits = ({ parent }: Wanted): boolean => left.some(({ id }) => id === parent);
    const ready = left.filter((one) => !waits(one));
    if (ready.length === 0) break;
    ordered.push(...ready);
    left = left.filter(waits);
  }
  return [...ordered, ...left];
}

interface Made {
  readonly channel?: Channel | undefined;
  readonly pocket?: Channel;
  readonly findings: readonly Finding[];
}

/** Straight along the radius to the usual end. */
const isSpoke = ({ kind, entry, path, parent, pocket }: Wanted): boolean =>
  parent === undefined &&
  pocket === undefined &&
  path === 'straight' &&
  'end' in entry &&
  entry.end === usualEnd[kind];

function spoke({ id, kind, spec, at }: Wanted, placed: PlacedMaster, { sprue, disc }: ChannelGround): Made {
  const channel =
    kind === 'vent'
      ? straightVent(id, placed, disc.radius, spec)
      : sprue && straightGate(id, placed, sprue.wellRadius, spec);
  return { channel, findings: channel ? [] : [noChannel(kind, placed, sprue !== undefined, at)] };
}

interface SoFar {
  readonly ground: ChannelGround;
  targetOf(placed: PlacedMaster): EntryTarget;
  readonly done: ReadonlyMap<string, Channel>;
  readonly memoize: Memoize;
}

function drawn(
  plan: Plan,
  wanted: Wanted,
  placed: PlacedMaster,
  { ground, targetOf, done, memoize }: SoFar,
): Made {
  const { kind, spec, path, id, at, parent, pocket } = wanted;
  if (kind === 'gate' && !ground.sprue && parent === undefined)
    return { findings: [noChannel(kind, placed, false, at)] };
  const entry = entryOf(plan, wanted.entry, placed);
  const target = targetOf(placed);
  if (!entry || target.outline.length === 0) return { findings: [noChannel(kind, placed, true, at)] };
  const from = parent === undefined ? undefined : done.get(parent);
  if (parent !== undefined && !from) return { findings: [noParent(wanted, placed)] };
  const far = from ? { channel: from } : pocket === undefined ? undefined : { pocket };
  const one: Drawn = { id, kind, spec, entry, path, far, slow: wanted.slow };
  const on: Omit<Ground, 'obstacles'> = {
    discRadius: ground.disc.radius,
    wellRadius: ground.sprue?.wellRadius,
    wall: ground.wall,
    turning: ground.bench.machine?.direction === 'clockwise' ? -1 : 1,
  };
  const outlines = () =>
    [
      ...fixtureOutlines(ground),
      ...ground.placed.filter((other) => other !== placed).map(targetOf),
      ...[...done.values()]
        .filter((other) => isDrawn(other) && other.placement !== placed.id && other.id !== parent)
        .map((other) => ({ outline: channelOutline(other) })),
    ].map(({ outline }) => ({ outline }));
  if (path !== 'routed') return drawChannel(one, target, { ...on, obstacles: outlines });
  // A search over the whole disc is made again only where something stands in another place.
  const obstacles = outlines();
  return memoize('routed way', { one, target, on, obstacles }, () =>
    drawChannel(one, target, { ...on, obstacles: () => obstacles }),
  );
}

/** The place that a name stands for; the plan was checked for having one. */
function entryOf(plan: Plan, entry: ChannelEntry, { master }: PlacedMaster): Drawn['entry'] | undefined {
  return 'named' in entry ? plan.masters?.[master]?.entry?.[entry.named] : entry;
}

/** Placements with the largest outline of their shadow, each found once. */
function targets(memoize: Memoize): SoFar['targetOf'] {
  const known = new Map<string, EntryTarget>();
  return (one) => {
    const target = known.get(one.id) ?? { ...one, outline: outlineOf(one, memoize) };
    known.set(one.id, target);
    return target;
  };
}

export function outlineOf({ mesh }: Pick<PlacedMaster, 'mesh'>, memoize: Memoize): EntryTarget['outline'] {
  const rings = memoize('outline', { mesh }, () => silhouette(mesh, outlineCell));
  return rings.reduce<EntryTarget['outline']>(
    (largest, ring) => (ringArea(ring) > ringArea(largest) ? ring : largest),
    [],
  );
}

const noParent = ({ id: subject, kind, placement }: Wanted, { x, y }: PlacedMaster): Finding =>
  finding('channels.no-parent', { subject, place: [x, y, 0], values: { kind, placement } });

function noChannel(kind: Wanted['kind'], one: PlacedMaster, hasSprue: boolean, at: TextPlace): Finding {
  return finding('layout.no-channel', {
    subject: one.id,
    place: [one.x, one.y, 0],
    values: { which: kind === 'gate' && !hasSprue ? 'no-sprue' : 'missed', kind },
    at,
  });
}

/** A gate or vent that the plan asks for; where it only says `straight`, its place in the text is the placement's. */
interface Wanted {
  readonly id: string;
  readonly kind: 'gate' | 'vent';
  readonly placement: string;
  readonly spec: ChannelSpec;
  readonly entry: ChannelEntry;
  readonly path: ChannelPath;
  /** The channel it leads out of or into. */
  readonly parent?: string | undefined;
  /** How far past the outline it ends blind, mm. */
  readonly pocket?: number | undefined;
  readonly land?: Land | undefined;
  /** How far past its last turn a slowing bend's pocket runs on, mm. */
  readonly slow?: number | undefined;
  readonly at: TextPlace;
}

const usualEnd = { gate: 'inner', vent: 'outer' } as const;

/** By the plan's entries, within one in the order of the placements. */
export function channelsWanted(plan: Plan, kind: Wanted['kind']): Wanted[] {
  const section = kind === 'gate' ? plan.gates : plan.vents;
  if (section === undefined) return [];
  const flat = expandPlacements(plan);
  const usual = {
    kind,
    spec: channelDefaults[kind],
    entry: { end: usualEnd[kind] },
    path: 'straight',
  } as const;
  if (section === 'straight')
    return flat.map(({ id, at }) => ({ ...usual, id: channelId(kind, id), placement: id, at }));
  const numbers = new Map<string, number>();
  const runners = new Set(kind === 'gate' ? plan.runners?.map(({ id }) => id) : []);
  return section.flatMap((one: PlanChannel) => {
    const ids = new Set(one.placements.flatMap((name) => placementsNamed(flat, name)));
    const { entry = usual.entry, path = usual.path, at } = one;
    const spec = specOf(one, usual.spec);
    const named =
      'from' in one ? one.from : 'to' in one && one.to && 'vent' in one.to ? one.to.vent : undefined;
    const more = {
      parent: named === undefined ? undefined : channelId(runners.has(named) ? 'runner' : kind, named),
      pocket: 'to' in one && one.to && 'pocket' in one.to ? one.to.pocket : undefined,
      land: 'land' in one ? one.land : undefined,
      slow: 'slow' in one ? one.slow?.pocket : undefined,
    };
    return flat
      .filter(({ id }) => ids.has(id))
      .map(({ id: placement }) => {
        const number = (numbers.get(placement) ?? 0) + 1;
        numbers.set(placement, number);
        return { id: channelId(kind, placement, number), kind, placement, spec, entry, path, at, ...more };
      });
  });
}

function specOf(one: PlanChannel, usual: ChannelSpec): ChannelSpec {
  const { width = usual.width, depth = usual.depth, endWidth = width, endDepth = depth } = one;
  const { section = usual.section, half = usual.half } = one;
  const joins = 'joins' in one && one.joins && { joins: true as const };
  return { width, depth, endWidth, endDepth, section, half, ...joins };
}
