import { type Finding, finding } from '../../findings/index.ts';
import {
  hole,
  type Outline,
  type Path,
  placed,
  polygon,
  radPerDegree,
  reversed,
} from '../../geometry/index.ts';
import { type Boss, hexagonCorners, type Mold, type Notch, type Part, task } from '../../mold/index.ts';
import { type FlatFixture, flatFixture, holeFit, openingFit } from '../making/index.ts';
import {
  engravedPlate,
  indexCut,
  layOutTitle,
  type PlanNames,
  planWords,
  type RimCut,
  rimTrack,
  type Title,
  titlePlaceOnRing,
} from '../plate/index.ts';

const id = 'registration-jig';
const name = 'registration jig';
/** Least material beside a pocket, and the ring's width inside of the innermost one. Common practice, mm. */
const leastWall = 1.5;
const innerWidth = 5;
const leastThickness = 4;
const index = indexCut(Infinity);
/** Of the half-round key. Only with this side up does it stand counter-clockwise from the index mark. */
const keyWidth = 6;

interface JigInput extends PlanNames {
  readonly radius: number;
  readonly bosses: readonly Boss[];
  readonly notches: readonly Notch[];
  /** As the plan says; left out, by bosses and nuts. */
  readonly width?: number;
  readonly thickness?: number;
  readonly fixture: FlatFixture;
}

/**
 * A ring as wide as the disc that drops into the can or onto the disc and holds every nut or boss in its place while
 * it is pressed in: openings through the ring, over the hexagon of a cap nut (which so goes in upright or dome down)
 * or hexagon boss, over the root of a dome or cone. Index mark (V) at angle 0, the witness notches, and a half-round key.
 */
export const registrationJig: Part = task({
  id,
  title: name,
  processes: ['rubber'],
  units: (mold) => (mold.bosses.length > 0 ? [{ subject: id, about: [], input: inputFor(mold) }] : []),
  run: (input, { kernel }) => {
    const outline = jigOutline(input);
    const { engraved, lettered, findings } = titleOf(input);
    const thin = thinFinding(input);
    const subjects = input.bosses.map((boss) => boss.id);
    const highest = Math.max(...input.bosses.map(({ rootDepth }) => rootDepth));
    const thickness = input.thickness ?? Math.max(leastThickness, highest);
    const naming = { id, title: name, role: 'jig', subjects, lettered } as const;
    const { solid, drawing } = kernel.scope((scope) =>
      engravedPlate(scope, { outline, thickness, engraved }, input.fixture, naming),
    );
    return {
      solids: [solid],
      drawings: [drawing],
      // One that is not given out needs no words on its label.
      findings: thin.length > 0 ? thin : [...lowFinding(thickness, highest), ...findings],
    };
  },
});

function inputFor({ disc, revision, bosses, notches, fixture }: Mold): JigInput {
  return {
    radius: disc.radius,
    label: disc.label,
    revision,
    bosses,
    notches,
    ...(fixture.jigWidth !== undefined && { width: fixture.jigWidth }),
    ...(fixture.jigThickness !== undefined && { thickness: fixture.jigThickness }),
    fixture: flatFixture(fixture),
  };
}

type Fitting = Pick<JigInput, 'fixture'>;

const fitOf = ({ fixture }: Fitting, boss: Boss): number =>
  holeFit(fixture, boss.acrossFlats > 0 ? boss.acrossFlats : 2 * boss.headRadius);

/** Radius of the circle round an opening. */
const reachOf = (input: Fitting, boss: Boss): number =>
  boss.acrossFlats > 0
    ? (boss.acrossFlats + fitOf(input, boss)) / Math.sqrt(3)
    : boss.headRadius + fitOf(input, boss) / 2;

/** The ring lies loosely in a can as wide as the disc. */
const outerRadius = ({ radius, fixture }: JigInput): number => radius - openingFit(fixture, 2 * radius) / 2;

/** Radius of the ring's opening; 0 where nothing is open in the middle. */
function innerRadius(input: JigInput): number {
  if (input.width !== undefined) return Math.max(0, outerRadius(input) - input.width);
  const nearest = Math.min(...input.bosses.map((boss) => Math.hypot(boss.x, boss.y) - reachOf(input, boss)));
  return nearest > innerWidth ? Math.max(innerWidth, nearest - innerWidth) : 0;
}

/** Openings over the hexagons (a corner on +x at turn 0, as the nuts stand) or the roots. */
export function pocketOf(input: Fitting, boss: Boss): Path {
  if (boss.acrossFlats === 0) return hole([boss.x, boss.y], reachOf(input, boss));
  const hexagon = polygon(hexagonCorners(boss.acrossFlats + fitOf(input, boss)));
  return reversed(placed(hexagon, boss.turnRad, [boss.x, boss.y]));
}

function jigOutline(input: JigInput): Outline {
  const outer = outerRadius(input);
  const cuts: RimCut[] = [
    indexCut(roomAt(input, 0, index.width)),
    ...input.notches.map((notch): RimCut => ({ ...notch, shape: 'V' })),
    { angleRad: keyAngle(input), width: keyWidth, shape: 'round', depth: keyWidth / 2 },
  ];
  const inner = innerRadius(input);
  const ring = inner > 0 ? [hole([0, 0], inner)] : [];
  const outline = [rimTrack(outer, cuts), ...ring, ...input.bosses.map((boss) => pocketOf(input, boss))];
  return outline;
}

/** Material between the edge at an angle, `width` along it, and the nearest opening, mm. */
function roomAt(input: JigInput, angleRad: number, width: number): number {
  const outer = outerRadius(input);
  const [x, y] = [outer * Math.cos(angleRad), outer * Math.sin(angleRad)];
  const free = input.bosses.map(
    (boss) => Math.hypot(boss.x - x, boss.y - y) - reachOf(input, boss) - width / 2,
  );
  return Math.max(0, Math.min(outer, ...free));
}

/** The first angle after the index mark that is clear of openings and notches, and of where both are in a mirror. */
function keyAngle(input: JigInput): number {
  const outer = outerRadius(input);
  const clear = (angle: number): boolean =>
    roomAt(input, angle, keyWidth) > keyWidth / 2 + leastWall &&
    input.notches.every((notch) =>
      [1, -1].every(
        (side) =>
          2 * outer * Math.abs(Math.sin((angle - side * notch.angleRad) / 2)) >
          (notch.width + keyWidth) / 2 + leastWall,
      ),
    );
  for (let step = 20; step < 175; step += 5) if (clear(step * radPerDegree)) return step * radPerDegree;
  return 20 * radPerDegree;
}

/** Which side to lay up, and of which plan it is. */
function titleOf(input: JigInput): Title {
  const [inner, outer] = [innerRadius(input), outerRadius(input)];
  const rounds = input.bosses.map((boss) => ({ x: boss.x, y: boss.y, radius: reachOf(input, boss) }));
  const find = titlePlaceOnRing(inner, outer - index.depth, rounds);
  return layOutTitle({ id, title: name }, ['THIS SIDE UP', ...planWords(input)], find);
}

/** Where openings are too near an edge or each other: the worst of them. */
function thinFinding(input: JigInput): Finding[] {
  const [outer, inner] = [outerRadius(input), innerRadius(input)];
  const walls = input.bosses.map((boss, i) => {
    const [from, reach] = [Math.hypot(boss.x, boss.y), reachOf(input, boss)];
    const toOthers = input.bosses
      .slice(0, i)
      .map((other) => Math.hypot(boss.x - other.x, boss.y - other.y) - reach - reachOf(input, other));
    const toOpening = inner > 0 ? [from - reach - inner] : [];
    return { boss, wall: Math.min(outer - from - reach, ...toOpening, ...toOthers) };
  });
  const { boss, wall } = walls.reduce((least, one) => (one.wall < least.wall ? one : least));
  if (wall >= leastWall) return [];
  const more = walls.filter((one) => one.wall < leastWall).length - 1;
  return [
    finding('jig.thin', {
      subject: id,
      place: [boss.x, boss.y, 0],
      values: { measured: wall, limit: leastWall, boss: boss.id, more },
    }),
  ];
}

/** A ring thinner than what it holds is high. */
function lowFinding(thickness: number, highest: number): Finding[] {
  if (thickness >= highest - 1e-9) return [];
  return [finding('jig.low', { subject: id, values: { measured: thickness, limit: highest } })];
}
