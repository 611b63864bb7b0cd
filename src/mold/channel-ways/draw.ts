import { type Finding, finding } from '../../findings/index.ts';
import type { Point2 } from '../../geometry/index.ts';
import { type ChannelEntry, type ChannelPath, resolveRadius } from '../../plan/index.ts';
import { type ChannelSpec, channelAlong, lapsOf } from '../channels.ts';
import type { Channel } from '../mold.ts';
import { cutRun, isRing, openRun, runLength } from '../shapes/index.ts';
import { arcWay, rounded } from './bend.ts';
import { type Entry, type EntryTarget, entryOn } from './entry.ts';
import { leastGap, meetsItself, passedBy } from './line.ts';
import { nearestOnRing, spansIn } from './ring.ts';
import { type Obstacle, route } from './route.ts';
import { slowingPocket } from './slowing-pocket.ts';

/** A channel that the plan gives an entry or a path. */
export interface Drawn {
  readonly id: string;
  readonly kind: 'gate' | 'vent';
  readonly spec: ChannelSpec;
  readonly entry: Exclude<ChannelEntry, { named: string }>;
  readonly path: ChannelPath;
  /** Where it begins or ends instead of at well or rim: in another channel, or blind so far past the outline. */
  readonly far?: { readonly channel: Channel } | { readonly pocket: number } | undefined;
  /** How far past its last way point a slowing bend's pocket runs on, mm. */
  readonly slow?: number | undefined;
}

/** What a way is drawn on, mm. `obstacles` are what a routed one goes round, without its own cavity. */
export interface Ground {
  readonly discRadius: number;
  /** Where there is no well, no gate can begin. */
  readonly wellRadius?: number | undefined;
  readonly wall: number;
  /** 1 where the disc turns counter-clockwise, else -1. */
  readonly turning: 1 | -1;
  obstacles(): readonly Pick<Obstacle, 'outline'>[];
}

/** Ways are looked for so much farther off than is wanted that outlines and bends drawn by chords keep it, mm. */
const spare = 0.03;
/** The grid that outlines are drawn on cuts their corners by up to half a cell, mm. */
const cutCorner = 0.1;

/** From so near a channel a way leads straight into it, mm: no node of the search need lie within it. */
const reachOfNode = 1;

type Faults = readonly Finding[];
/** A way, and the points it turns at before they are rounded; or what keeps it from being drawn. */
type Way = { readonly points: Point2[]; readonly corners?: readonly Point2[] } | { readonly faults: Faults };

/** The channel, or what keeps it from being drawn; and what is to be said of it all the same. */
export function drawChannel(
  drawn: Drawn,
  target: EntryTarget,
  ground: Ground,
): { readonly channel?: Channel; readonly pocket?: Channel; readonly findings: Faults } {
  const widest = Math.max(drawn.spec.width, drawn.spec.endWidth);
  const entry = entryOn(target, drawn.entry, widest);
  if (!entry) return { findings: [] };
  const about = { subject: drawn.id, place: [...entry.at, 0] as const };
  const said = { kind: drawn.kind, placement: target.id } as const;
  const limit = widest / 2;
  const findings: Finding[] =
    entry.off > limit
      ? [finding('channels.entry-off', { ...about, values: { ...said, measured: entry.off, limit } })]
      : [];
  const way = wayTo(drawn, target, entry, ground);
  if ('faults' in way) return { findings: [...findings, ...way.faults] };
  const channel = asChannel(drawn, target, way.points);
  const missed = unreached(channel, drawn, target, ground);
  if (missed.length > 0) return { findings: [...findings, ...missed] };
  const slowed =
    drawn.slow !== undefined && way.corners && slowingPocket(channel, way.corners, drawn.slow, ground);
  return {
    channel,
    ...(slowed && { pocket: slowed.pocket }),
    findings: [...findings, ...throughOwn(way.points, drawn, target), ...(slowed ? slowed.findings : [])],
  };
}

/** A gate out of a runner, but only across the well: metal comes to it from there, and not by the runner. */
function unreached(
  channel: Channel,
  { far }: Drawn,
  { id }: EntryTarget,
  { wellRadius = 0 }: Ground,
): Finding[] {
  if (!(far && 'channel' in far && far.channel.kind === 'runner')) return [];
  const well = { outline: [[0, 0]] as Point2[] };
  const measured = leastGap(
    openRun(channel).map(({ at }) => at),
    [well],
  );
  if (measured >= wellRadius) return [];
  const values = { measured, limit: wellRadius, placement: id, other: far.channel.placement };
  return [
    finding('channels.out-of-reach', { subject: channel.id, place: [...channel.run[0].at, 0], values }),
  ];
}

/** From the entry, or rather from as far within the cavity as it laps, out to the well or the rim. */
function wayTo(drawn: Drawn, target: EntryTarget, entry: Entry, ground: Ground): Way {
  const { path, kind, spec } = drawn;
  const laps = lapsOf(spec);
  const [own, out] = kind === 'gate' ? [laps[1], laps[0]] : laps;
  const within = step(entry.at, entry.outward, -own);
  const ends = kind === 'gate' ? (ground.wellRadius ?? 0) - out : ground.discRadius + out;
  const end = (from: Point2): Point2 => {
    if (drawn.far && 'channel' in drawn.far) return nearestOn(freePath(drawn.far.channel, ground.wall), from);
    if (drawn.far) return from === within ? step(entry.at, entry.outward, drawn.far.pocket) : from;
    const radius = Math.hypot(...from);
    return [(from[0] / radius) * ends, (from[1] / radius) * ends];
  };
  if (path === 'routed' && !(drawn.far && 'pocket' in drawn.far))
    return routedWay(drawn, target, entry, ground, { within, end });
  if (path === 'straight' || path === 'routed') return { points: [within, end(within)] };
  if ('slantRad' in path) return slanted(within, path.slantRad * ground.turning, ends, drawn, target);
  // Seen from the well outward a gate is bent as the plan says; a vent runs outward anyway.
  if ('arcRad' in path) {
    const turn = kind === 'gate' ? -path.arcRad : path.arcRad;
    return { points: arcWay(within, end(within), turn) };
  }
  const middle = Math.atan2(target.y, target.x);
  const through = path.through.map(({ radius, angleRad }): Point2 => {
    const far = resolveRadius(radius, ground.discRadius);
    return [far * Math.cos(middle + angleRad), far * Math.sin(middle + angleRad)];
  });
  const whose = { id: drawn.id, kind, placement: target.id };
  const outside = through.flatMap((at, i) => outsideDisc(at, i, whose, ground.discRadius));
  if (outside.length > 0) return { faults: outside };
  const inOrder = kind === 'gate' ? [...through].reverse() : through;
  const [last = within] = inOrder.slice(-1);
  const outer = end(last);
  const corners = [within, ...inOrder, ...(outer === last ? [] : [outer])];
  const way = bent(corners, whose, widestOf(spec));
  return 'faults' in way ? way : { ...way, corners };
}

const widestOf = ({ width, endWidth }: ChannelSpec): number => Math.max(width, endWidth);

/** A straight way that leaves the radius by an angle, outward clockwise where it is positive, to a distance from the axis. */
function slanted(from: Point2, leanRad: number, ends: number, { id, kind }: Drawn, target: EntryTarget): Way {
  const radius = Math.hypot(...from);
  const inward = kind === 'gate' ? -1 : 1;
  const [c, s] = [Math.cos(leanRad), Math.sin(leanRad)];
  const [x, y] = [(inward * from[0]) / radius, (inward * from[1]) / radius];
  const way: Point2 = [c * x + s * y, c * y - s * x];
  // Nearest to the axis the line passes it at radius sin(lean).
  const passes = Math.abs(radius * s);
  if (passes > ends) {
    const values = { kind, placement: target.id, measured: passes, limit: ends } as const;
    return { faults: [finding('channels.slant', { subject: id, place: [...from, 0], values })] };
  }
  const reach = Math.sqrt(ends * ends - passes * passes);
  const length = kind === 'gate' ? radius * c - reach : reach - radius * c;
  return { points: [from, step(from, way, length)] };
}

/** A channel's middle line as a ring of points, a wall and a width from its ends where it is long enough. */
function freePath({ run, laps }: Channel, wall: number): readonly Point2[] {
  if (isRing(run)) return run.slice(1).map(({ at }) => at);
  const aside = wall + run[0].width;
  const free = cutRun(run, laps[0] + aside, runLength(run) - laps[1] - aside);
  const path = (free.length > 1 ? free : run).map(({ at }) => at);
  // There and back again, so that the ring's last side is its first.
  return [...path, ...path.slice(1, -1).reverse()];
}

const nearestOn = (path: readonly Point2[], to: Point2): Point2 => nearestOnRing(path, to).at;

const step = (from: Point2, way: Point2, by: number): Point2 => [
  from[0] + way[0] * by,
  from[1] + way[1] * by,
];

/** A channel as findings name it. */
export type Whose = Pick<Channel, 'id' | 'kind' | 'placement'>;

export function outsideDisc(at: Point2, i: number, { id, kind, placement }: Whose, limit: number): Finding[] {
  const measured = Math.hypot(...at);
  if (measured <= limit) return [];
  const values = { kind, placement, number: i + 1, measured, limit };
  return [finding('channels.way-outside', { subject: id, place: [...at, 0], values })];
}

/** Rounded, where there is room for its bends and it does not meet itself. */
export function bent(
  points: readonly Point2[],
  { id, kind, placement }: Whose,
  width: number,
): { readonly points: Point2[] } | { readonly faults: Faults } {
  const line = rounded(points, width);
  const said = { kind, placement } as const;
  if ('radius' in line) {
    const { at, radius: measured, least: limit } = line;
    const values = { which: 'bend', ...said, measured, limit } as const;
    return { faults: [finding('channels.tight', { subject: id, place: [...at, 0], values })] };
  }
  const met = meetsItself(line, width);
  if (!met) return { points: line };
  const values = { which: 'itself', ...said, measured: met.apart, limit: width } as const;
  return { faults: [finding('channels.tight', { subject: id, place: [...met.at, 0], values })] };
}

/** A way found round all else; its first piece leaves the cavity squarely. */
function routedWay(
  drawn: Drawn,
  target: EntryTarget,
  entry: Entry,
  ground: Ground,
  { within, end }: { readonly within: Point2; end(from: Point2): Point2 },
): Way {
  const width = widestOf(drawn.spec);
  const others = ground.obstacles();
  const all = [...others, target];
  const { discRadius, wellRadius = 0, wall } = ground;
  const wanted = wall + width / 2 + cutCorner;
  const fromRunner = drawn.far && 'channel' in drawn.far && drawn.far.channel.kind === 'runner';
  let gap = wanted + spare;
  for (let round = 0; round < 4; round++) {
    const from = leaving(entry, target, gap);
    const found = route({
      from,
      left: toGo(drawn, ground),
      between: [
        fromRunner || drawn.kind === 'vent' ? wellRadius + gap : 0,
        drawn.kind === 'vent' ? discRadius + 1 : discRadius - gap,
      ],
      obstacles: all.map(({ outline }) => ({ outline, gap })),
    });
    if (!found) break;
    const whose = { id: drawn.id, kind: drawn.kind, placement: target.id };
    const way = bent([within, ...found, end(found[found.length - 1])], whose, width);
    if ('faults' in way) return way;
    // Rounded bends cut the corner they go round a little: then once more, a little farther off.
    const beyond = passedBy(way.points, gap + 3 * width);
    const kept = Math.min(leastGap(way.points, others), leastGap(beyond, [target]));
    if (kept >= wanted) return way;
    gap += wanted - kept + spare;
  }
  const values = { kind: drawn.kind, placement: target.id, limit: wall } as const;
  return { faults: [finding('channels.no-way', { subject: drawn.id, place: [...entry.at, 0], values })] };
}

/** How far it is at least to the well, the rim, or the middle of another channel's mouth. */
function toGo({ kind, far }: Drawn, { discRadius, wellRadius = 0, wall }: Ground): (at: Point2) => number {
  if (far && 'channel' in far) {
    const { channel } = far;
    const reach = channel.run[0].width / 2 + reachOfNode;
    const path = freePath(channel, wall);
    return (at) => {
      const [x, y] = nearestOn(path, at);
      return Math.max(0, Math.hypot(x - at[0], y - at[1]) - reach);
    };
  }
  return kind === 'gate'
    ? ([x, y]) => Math.max(0, Math.hypot(x, y) - wellRadius)
    : ([x, y]) => Math.max(0, discRadius - Math.hypot(x, y));
}

/** The point straight out of an entry that is so far from its outline; at a corner that is a little more than as far from the entry. */
function leaving({ at, outward }: Entry, { outline }: EntryTarget, gap: number): Point2 {
  let [from, out] = [at, gap];
  for (let tries = 0; tries < 8; tries++) {
    from = step(at, outward, out);
    const near = nearestOnRing(outline, from).at;
    const short = gap - Math.hypot(near[0] - from[0], near[1] - from[1]);
    if (short <= 0) break;
    out += short + 1e-3;
  }
  return from;
}

/** A channel may lie in its own cavity as far as it laps, and as far again where the outline bends. */
function throughOwn(points: readonly Point2[], drawn: Drawn, target: EntryTarget): Finding[] {
  const { spec, kind, id } = drawn;
  const limit = Math.max(spec.width, spec.endWidth);
  const measured = spansIn(points, target.outline).reduce((sum, [from, to]) => sum + to - from, 0);
  if (measured <= limit) return [];
  const values = { kind, placement: target.id, measured, limit };
  return [finding('channels.through-own', { subject: id, place: [...points[0], 0], values })];
}

/** The way as metal or air goes it, with how far it reaches into the cavity. */
function asChannel({ id, kind, spec, far }: Drawn, target: EntryTarget, points: readonly Point2[]): Channel {
  const laps = lapsOf(spec);
  const own = spansIn(points, target.outline).find(([from]) => from === 0)?.[1] ?? 0;
  const about = { id, kind, placement: target.id, spec };
  // Out of another channel it begins at that one's middle line.
  const out = !far ? laps[kind === 'gate' ? 0 : 1] : 'channel' in far ? far.channel.run[0].width / 2 : 0;
  const channel =
    kind === 'gate'
      ? channelAlong(about, [...points].reverse(), [out, own])
      : channelAlong(about, points, [own, out]);
  return far && 'channel' in far ? { ...channel, opensInto: far.channel.id } : channel;
}
