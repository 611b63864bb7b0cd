import { type Finding, finding } from '../findings/index.ts';
import { defaultChordError, type Point2, segmentsFor } from '../geometry/index.ts';
import { channelDefaults, type Plan, type PlanRunner, resolveRadius } from '../plan/index.ts';
import { arcWay } from './channel-ways/bend.ts';
import { bent, outsideDisc, type Whose } from './channel-ways/draw.ts';
import { pastRim } from './channel-ways/slowing-pocket.ts';
import { type ChannelSpec, channelAlong, channelId } from './channels.ts';
import type { Channel, Disc, Sprue } from './mold.ts';
import { isRing } from './shapes/index.ts';

/** What runners are drawn on, mm. */
interface RunnerGround {
  readonly disc: Pick<Disc, 'radius'>;
  readonly sprue: Pick<Sprue, 'wellRadius'> | undefined;
  readonly wall: number;
}

type Runners = { readonly channels: readonly Channel[]; readonly findings: readonly Finding[] };

/** Runners from the well outward, and rings with the spokes that feed them; what is wrong with one is a finding. */
export function resolveRunners({ runners = [] }: Pick<Plan, 'runners'>, ground: RunnerGround): Runners {
  const each = runners.map((one): Runners => {
    const { sprue, disc, wall } = ground;
    const subject = channelId('runner', one.id);
    if (!sprue) {
      const values = { which: 'no-sprue', kind: 'runner' } as const;
      return { channels: [], findings: [finding('layout.no-channel', { subject, values })] };
    }
    const made =
      'ring' in one.course
        ? { channels: ringWithSpokes(one, one.course.ring, sprue.wellRadius, disc.radius), findings: [] }
        : outward(one, one.course, sprue.wellRadius, disc.radius);
    const judged = made.channels.flatMap((channel) => [
      ...pastRim(channel, disc.radius - wall),
      ...overWell(channel, sprue.wellRadius),
    ]);
    return { channels: made.channels, findings: [...made.findings, ...judged] };
  });
  return {
    channels: each.flatMap(({ channels }) => channels),
    findings: each.flatMap(({ findings }) => findings),
  };
}

/** The ids of what a runner of the plan is drawn as. */
export const runnerIds = ({ id, course }: Pick<PlanRunner, 'id' | 'course'>): string[] => [
  channelId('runner', id),
  ...('ring' in course
    ? Array.from({ length: course.ring.spokes }, (_, k) => spokeId(id, k, course.ring.spokes))
    : []),
];

const spokeId = (runner: string, k: number, count: number): string =>
  channelId('runner', `${runner}-spoke`, count > 1 ? k + 1 : 1);

/** Runners that no gate leads out of. */
export function idleRunners(
  { runners = [] }: Pick<Plan, 'runners'>,
  channels: readonly Channel[],
): Finding[] {
  return runners.flatMap(({ id: placement }) => {
    const subject = channelId('runner', placement);
    const isDrawn = channels.some(({ id }) => id === subject);
    const feeds = channels.some(({ kind, opensInto }) => kind !== 'runner' && opensInto === subject);
    if (!isDrawn || feeds) return [];
    return [finding('channels.feeds-nothing', { subject, values: { placement } })];
  });
}

function specOf(one: PlanRunner): ChannelSpec {
  const usual = channelDefaults.runner;
  const { width = usual.width, depth = usual.depth, endWidth = width, endDepth = depth } = one;
  return {
    width,
    depth,
    endWidth,
    endDepth,
    section: one.section ?? usual.section,
    half: one.half ?? usual.half,
  };
}

const onCircle = (radius: number, angleRad: number): Point2 => [
  radius * Math.cos(angleRad),
  radius * Math.sin(angleRad),
];

type Course<K extends string> = Extract<PlanRunner['course'], Record<K, unknown>>;

function ringWithSpokes(
  one: PlanRunner,
  ring: Course<'ring'>['ring'],
  well: number,
  disc: number,
): Channel[] {
  const spec = specOf(one);
  const radius = resolveRadius(ring.radius, disc);
  const whose = { id: channelId('runner', one.id), kind: 'runner', placement: one.id } as const;
  const sides = segmentsFor(radius, defaultChordError);
  const round = Array.from({ length: sides + 1 }, (_, k) =>
    onCircle(radius, (2 * Math.PI * (k % sides)) / sides),
  );
  const circle = channelAlong({ ...whose, spec }, round, [0, 0]);
  if (radius - spec.width / 2 <= well) return [circle];
  const spokes = Array.from({ length: ring.spokes }, (_, k): Channel => {
    const angle = ring.startRad + (2 * Math.PI * k) / ring.spokes;
    const way = [onCircle(well - spec.width / 2, angle), onCircle(radius, angle)];
    const laps = [spec.width / 2, spec.width / 2] as const;
    const id = spokeId(one.id, k, ring.spokes);
    return { ...channelAlong({ ...whose, id, spec }, way, laps), opensInto: whose.id };
  });
  return [circle, ...spokes];
}

function outward(one: PlanRunner, { to, path }: Course<'to'>, well: number, disc: number): Runners {
  const spec = specOf(one);
  const whose: Whose = { id: channelId('runner', one.id), kind: 'runner', placement: one.id };
  const end = onCircle(resolveRadius(to.radius, disc), to.angleRad);
  const begin = (first: Point2): Point2 => onCircle(well - spec.width / 2, Math.atan2(first[1], first[0]));
  const drawn = (points: readonly Point2[]): Channel =>
    channelAlong({ ...whose, spec }, points, [spec.width / 2, 0]);
  if (path === 'straight') return { channels: [drawn([begin(end), end])], findings: [] };
  if ('arcRad' in path) return { channels: [drawn(arcWay(begin(end), end, path.arcRad))], findings: [] };
  const through = path.through.map(({ radius, angleRad }) =>
    onCircle(resolveRadius(radius, disc), to.angleRad + angleRad),
  );
  const outside = through.flatMap((at, i) => outsideDisc(at, i, whose, disc));
  if (outside.length > 0) return { channels: [], findings: outside };
  const way = bent([begin(through[0]), ...through, end], whose, Math.max(spec.width, spec.endWidth));
  return 'faults' in way
    ? { channels: [], findings: way.faults }
    : { channels: [drawn(way.points)], findings: [] };
}

/** A runner that ends in the well, or a ring that touches it, is none. */
function overWell({ id: subject, placement, run }: Channel, limit: number): Finding[] {
  const { at, width } = run[run.length - 1];
  const measured = Math.hypot(...at) - (isRing(run) ? width / 2 : -width / 2);
  if (measured > limit) return [];
  return [
    finding('channels.over-well', { subject, place: [...at, 0], values: { measured, limit, placement } }),
  ];
}
