import type { Point2 } from '../geometry/index.ts';
import {
  boltsOn,
  channelOutline,
  fixtureOutlines,
  type Mold,
  type Mouthpiece,
  type Shadow,
  shadowOf,
  sprueSpace,
} from '../mold/index.ts';
import {
  channelDefaults,
  type EntryPlace,
  expandPlacements,
  type Plan,
  type PlanChannel,
  partingDefaults,
  placementsNamed,
} from '../plan/index.ts';
import type { Fixed, Ground, Kind, Mouth, Problem } from './problem.ts';
import { areaInside, type Shape, shapeOf } from './shape.ts';

type Wish = NonNullable<Plan['arrange']>;
type Pieces = Wish['pieces'][string];

/** A share of the radius is as good as straight; farther gates run long beside their neighbors. From what was tried. */
const usualLeanRad = Math.PI / 6;
/** Rubber between two gates that a knife leaves whole, mm: common practice, no published source. */
const usualGap = 1.5;
/** An ample wall, in least walls: past it no more was seen to be bought. */
const ampleShare = 1.5;
/** More of one master find room on no disc of the trade. */
const mostMore = 200;

/** Placements that stay where they are: all but those that were arranged and are not locked. */
function staying(plan: Plan): ReadonlySet<string> {
  const entries = plan.placements ?? [];
  return new Set(
    expandPlacements(plan)
      .filter(({ entry }) => !entries[entry].arranged || entries[entry].locked)
      .map(({ id }) => id),
  );
}

/** What is to be arranged, from the plan and its mold as it is laid out so far. */
export function problemOf(plan: Plan, mold: Mold, wish: Wish): Problem {
  const kept = staying(plan);
  const ground = groundOf(plan, mold, wish);
  const shadows = new Map<string, Shadow>();
  const shadow = (master: string): Shadow | undefined => {
    const { sink } = wish.pieces[master] ?? {};
    const found = shadows.get(master) ?? shadowOf(plan, mold, { master, sink });
    if (found) shadows.set(master, found);
    return found;
  };
  const wall = Number.isFinite(ground.ample) ? ground.ample : 3 * ground.wall;
  // The largest circle in a piece has no more than its area.
  const outlines = Object.keys(wish.pieces).flatMap((id) => shadow(id) ?? []);
  const inner = Math.max(0, ...outlines.map(({ outline }) => Math.sqrt(areaInside(outline) / Math.PI)));
  const margin = Math.max(wall, mold.limits.cavityToBoss) + 4 + inner;
  const shaped = makeShapes(margin);
  const lie = mold.placements.filter(({ id }) => kept.has(id));
  const kinds = Object.entries(wish.pieces).flatMap(([id, pieces]): Kind[] => {
    const seen = shadow(id);
    if (!seen) return [];
    const there = lie.filter(({ master }) => master === id).length;
    return [kindOf(plan, mold, wish, { id, pieces, seen, there, shape: shaped(seen.outline) })];
  });
  const fixed = [...fixturesOf(mold, shaped), ...placedOf(mold, lie, ground, shadow, shaped)];
  return { ground, kinds, fixed };
}

/** The shape of an outline, found once for each. */
function makeShapes(margin: number): (outline: readonly Point2[]) => Shape {
  const made = new Map<readonly Point2[], Shape>();
  return (outline) => {
    const shape = made.get(outline) ?? shapeOf(outline, margin);
    made.set(outline, shape);
    return shape;
  };
}

function groundOf({ parting }: Plan, mold: Mold, { wall = mold.limits.wall, ample, gates }: Wish): Ground {
  const { disc, limits, sprue, bench } = mold;
  const bolts = mold.process === 'rubber' ? boltsOn(bench) : undefined;
  // Bolts that may stand anywhere on their circle leave what lies within it.
  const within =
    bolts && bolts.startRad === undefined ? bolts.circle - bolts.radius - limits.wall : disc.radius;
  return {
    radius: disc.radius,
    rim: Math.max(limits.cavityToRim, disc.radius - within),
    well: sprue && {
      radius: sprue.wellRadius,
      limit: limits.cavityToWell + sprueSpace(sprue).reach - sprue.wellRadius,
    },
    wall,
    ample: ample === 'no end' ? Number.POSITIVE_INFINITY : (ample ?? ampleShare * wall),
    gateGap: gates?.gap ?? usualGap,
    leanRad: gates?.leanRad ?? usualLeanRad,
    slope: Math.tan(parting?.slopeRad ?? partingDefaults.slopeRad),
  };
}

interface One {
  readonly id: string;
  readonly pieces: Pieces;
  readonly seen: Shadow;
  /** How many stay already. */
  readonly there: number;
  readonly shape: Shape;
}

function kindOf(plan: Plan, mold: Mold, wish: Wish, { id, pieces, seen, there, shape }: One): Kind {
  const { count, most = mostMore, worth = 1, place } = pieces;
  const like = channelFor(plan, id, 'gates');
  const gate = {
    width: like?.width ?? wish.gates?.width ?? channelDefaults.gate.width,
    depth: like?.depth ?? channelDefaults.gate.depth,
    half: like?.half ?? channelDefaults.gate.half,
  };
  const vent = channelFor(plan, id, 'vents');
  const volume = mold.masters.find((one) => one.id === id)?.measures.volume ?? 0;
  return {
    id,
    shape,
    scale: seen.scale,
    count: typeof count === 'number' ? Math.max(0, count - there) : 0,
    more: typeof count === 'number' ? 0 : Math.max(0, most - there),
    // What fills gaps comes after all that is wanted for itself.
    worth: count === 'fill the gaps' ? worth * 1e-6 : worth,
    weight: volume,
    place,
    level: seen.level,
    ...(mold.sprue && { gate: { width: gate.width, mouths: mouthsOf(plan, id, pieces, seen, gate) } }),
    ...(vent && { vent: vent.width ?? channelDefaults.vent.width }),
  };
}

/** The entry of the plan's gates or vents that is for a master: by its name, or by one of its placements. */
export function channelFor(
  plan: Plan,
  master: string,
  section: 'gates' | 'vents',
): Partial<PlanChannel> | undefined {
  const list = plan[section];
  if (list === 'straight') return {};
  const flat = expandPlacements(plan);
  return list?.find(({ placements }) =>
    placements.some(
      (name) =>
        name === 'all' ||
        name === master ||
        placementsNamed(flat, name).some((one) => flat.find(({ id }) => id === one)?.master === master),
    ),
  );
}

/** A mouth in a leg is passed by where others reach so much deeper, as a share of the deepest. Our own choice. */
const thickEnough = 0.5;
/** Directions that gates are tried from, where the plan names no place. */
const directions = 24;

function mouthsOf(plan: Plan, id: string, { gate }: Pieces, seen: Shadow, channel: Mouthpiece): Mouth[] {
  const named = gate && 'named' in gate ? plan.masters?.[id]?.entry?.[gate.named] : gate;
  const places: EntryPlace[] = named
    ? [named]
    : Array.from({ length: directions }, (_, k) => ({ angleRad: (2 * Math.PI * k) / directions }));
  const mouths = places.flatMap((place) => seen.mouth(place, channel) ?? []);
  const open = mouths.filter(({ opens }) => opens);
  // Where none seems to open, the checks say so of the one that is taken.
  const some = open.length > 0 ? open : mouths;
  // A leg much thinner than the gate is no place for it: metal enters where it is thick.
  const most = Math.max(...some.map(({ deep }) => deep));
  return some.filter(({ deep }) => deep >= thickEnough * most);
}

const fixturesOf = (mold: Mold, shaped: (outline: readonly Point2[]) => Fixed['shape']): Fixed[] =>
  fixtureOutlines(mold).map(({ id, thing, outline }): Fixed => {
    const { wall, cavityToBoss } = mold.limits;
    const [x, y] = middleOf(outline);
    const about = outline.map(([u, v]): Point2 => [u - x, v - y]);
    const limit = thing === 'boss' ? cavityToBoss : wall;
    return { id, shape: shaped(leftHanded(about)), x, y, turnRad: 0, limit, gateLimit: wall, isPiece: false };
  });

/** Pieces that stay, with their gates and vents. */
function placedOf(
  mold: Mold,
  lie: Mold['placements'],
  { gateGap, wall }: Ground,
  shadow: (master: string) => Shadow | undefined,
  shaped: (outline: readonly Point2[]) => Fixed['shape'],
): Fixed[] {
  const ids = new Set(lie.map(({ id }) => id));
  const pieces = lie.flatMap((one): Fixed[] => {
    const { outline, level } = shadow(one.master) ?? {};
    if (!outline) return [];
    const turnRad = Math.atan2(one.y, one.x) + one.turnRad;
    return [
      {
        id: one.id,
        shape: shaped(outline),
        x: one.x,
        y: one.y,
        turnRad,
        limit: wall,
        gateLimit: wall,
        isPiece: true,
        level,
      },
    ];
  });
  const channels = mold.channels
    .filter(({ placement }) => ids.has(placement))
    .map((channel): Fixed => {
      const outline = channelOutline(channel);
      const [x, y] = middleOf(outline);
      const about = leftHanded(outline.map(([u, v]): Point2 => [u - x, v - y]));
      return {
        id: channel.id,
        shape: shaped(about),
        x,
        y,
        turnRad: 0,
        limit: wall,
        gateLimit: gateGap,
        isPiece: false,
      };
    });
  return [...pieces, ...channels];
}

function middleOf(outline: readonly Point2[]): Point2 {
  const [x, y] = outline.reduce(([a, b], [u, v]) => [a + u, b + v], [0, 0]);
  return [x / outline.length, y / outline.length];
}

/** Counter-clockwise. */
function leftHanded(ring: readonly Point2[]): Point2[] {
  const area = ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    return sum + x * v - u * y;
  }, 0);
  return area < 0 ? [...ring].reverse() : [...ring];
}
