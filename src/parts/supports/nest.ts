import { type Finding, finding } from '../../findings/index.ts';
import { type Path, type Point2, pointsOf, polygon, reversed, upsideDown } from '../../geometry/index.ts';
import type { Profile, Scope } from '../../kernel/index.ts';
import {
  type BuildUpSpace,
  buildUpSpaces,
  type Mold,
  type Part,
  type PartOutput,
  type Side,
  type Tools,
  task,
} from '../../mold/index.ts';
import { holeFit, onBed } from '../making/index.ts';
import {
  bossHoles,
  drawnTo,
  engravedPlate,
  freeSpace,
  indexCut,
  letterPlate,
  outerRings,
  overlapsAmong,
  overlapsBetween,
  type PlanNames,
  planWords,
  plateThickness,
  rimTrack,
  roomBehind,
  type Standing,
  shaftHole,
  standingOn,
  wider,
} from '../plate/index.ts';
import { buildUpFeet } from './build-up.ts';
import type { Foot } from './build-up-feet.ts';

/** Size (mm) of the windows whose clearance is taken: that of a usual build-up. */
const usualSize = 10;
/** Least material between a window and the rim, mm. Common practice. */
const leastWall = 1.5;

interface NestInput extends Standing, PlanNames {
  readonly radius: number;
  readonly thickness: number;
  readonly spaces: readonly BuildUpSpace[];
  readonly estimated: boolean;
}

/** A window for one build-up, as the nest lies on its half, seen on its upper face. */
interface Window {
  readonly placement: string;
  readonly words: string;
  readonly profile: Profile;
}

/**
 * Plates as large as the disc that show where each build-up goes: laid on the parting face of a half, they take every
 * build-up of that half through a window in the shape of its foot with clearance, its number beside it. Holes for the
 * bosses and the sprue form, an index notch at angle 0. What fills up under raised masters goes on the lower half;
 * what fills up over sunk ones is laid on the upper half, whose nest is turned over about the index mark's radius.
 */
export const nest: Part = task({
  id: 'nest',
  title: 'nests of the build-ups',
  processes: ['rubber'],
  units: (mold) => {
    const spaces = buildUpSpaces(mold);
    return spaces.length > 0 ? [{ subject: 'nest', about: [], input: inputFor(mold, spaces) }] : [];
  },
  run: (input, tools) => {
    const feet = input.spaces.flatMap((space) =>
      buildUpFeet(space, tools).map((foot) => ({ placement: space.id, foot })),
    );
    const made = ([1, -1] as const).flatMap((side) => {
      const own = feet.filter(({ foot }) => foot.side === side);
      return own.length > 0 ? [oneNest(input, side, own, tools)] : [];
    });
    return {
      solids: made.flatMap(({ solids }) => solids),
      drawings: made.flatMap(({ drawings = [] }) => drawings),
      findings: made.flatMap(({ findings }) => findings),
    };
  },
});

const inputFor = (mold: Mold, spaces: readonly BuildUpSpace[]): NestInput => ({
  ...standingOn(mold),
  radius: mold.disc.radius,
  thickness: plateThickness(mold.fixture),
  label: mold.disc.label,
  revision: mold.revision,
  spaces,
  estimated: mold.placements.some(({ id, estimated }) => estimated && spaces.some((one) => one.id === id)),
});

interface PlacedFoot {
  readonly placement: string;
  readonly foot: Foot;
}

function oneNest(input: NestInput, side: Side, feet: readonly PlacedFoot[], { kernel }: Tools): PartOutput {
  const half = side === 1 ? 'lower' : 'upper';
  const named = { id: `${half}-nest`, title: `nest of the build-ups on the ${half} half` };
  const { thickness, fixture, estimated } = input;
  const subjects = [...new Set(feet.map(({ placement }) => placement))];
  return kernel.scope((scope) => {
    const windows = feet.map((one) => windowFor(scope, one, side, input));
    const holes = holesOn(input, side);
    const drawn = drawnPlate(scope, input, { ...named, half, windows, holes });
    const { outline, engraved, lettered } = drawn;
    const naming = { ...named, role: 'nest' as const, subjects, lettered, windows: drawn.windows, estimated };
    const plate = { outline, thickness, engraved };
    const toPrint = side === 1 ? onBed(0) : upsideDown;
    const { solid, drawing } = engravedPlate(scope, plate, fixture, naming, toPrint);
    const broken = brokenWindows(scope, named.id, { windows, holes, radius: input.radius });
    return {
      solids: [solid],
      drawings: [drawing],
      // One that is not given out needs no words on it.
      findings: broken.length > 0 ? broken : [...meetings(scope, named.id, windows), ...drawn.findings],
    };
  });
}

/** Seen on the parting face of the upper half, y runs the other way. */
const seenOn = (side: Side, rings: readonly (readonly Point2[])[]): Point2[][] =>
  rings.map((ring) => {
    const flipped = ring.map(([x, y]): Point2 => [x, side * y]);
    return side === 1 ? flipped : flipped.reverse();
  });

/** The foot with clearance all round, at least that of the plan's fixtures: build-ups are cut by hand too. */
function windowFor(
  scope: Scope,
  { placement, foot }: PlacedFoot,
  side: Side,
  { fixture }: NestInput,
): Window {
  const gap = Math.max(fixture.clearance, holeFit(fixture, usualSize) / 2) + drawnTo;
  const { words, rings } = foot;
  const exact = scope.profileOf(seenOn(side, rings));
  return { placement, words, profile: wider(scope, exact, gap, fixture.footChamfer) };
}

const holesOn = (input: NestInput, side: Side): Path[] => [
  ...shaftHole(input),
  ...bossHoles({ ...input, bosses: input.bosses.map((boss) => ({ ...boss, y: side * boss.y })) }),
];

interface Drawn {
  readonly id: string;
  readonly title: string;
  readonly half: 'lower' | 'upper';
  readonly windows: readonly Window[];
  readonly holes: readonly Path[];
}

function drawnPlate(scope: Scope, input: NestInput, { id, title, half, windows, holes }: Drawn) {
  const { radius } = input;
  const rings = outerRings(scope, scope.uniteProfiles(windows.map(({ profile }) => profile)));
  const open = [...rings, ...holes.map((path) => pointsOf(path))];
  const index = indexCut(roomBehind([radius, 0], open));
  const outline = [rimTrack(radius, [index]), ...holes, ...rings.map((ring) => reversed(polygon(ring)))];
  const wishes = windows.map(({ words, profile }) => ({
    id: words,
    rings: outerRings(scope, profile),
    texts: [[words]],
  }));
  const words = [`${half} half`, 'THIS SIDE UP', ...planWords(input)];
  const inner = radius - index.depth - 1;
  const lettering = letterPlate({ id, title, words, radius: inner }, wishes, () =>
    freeSpace(inner, open, []),
  );
  const named = wishes.flatMap((wish) =>
    wish.rings.map((corners) => ({ id: `build-up ${wish.id}`, corners })),
  );
  return { ...lettering, outline, windows: named };
}

const meetings = (scope: Scope, subject: string, windows: readonly Window[]): Finding[] =>
  overlapsAmong(
    scope,
    windows.map(({ profile }) => profile),
  ).map(({ one, other, area }) =>
    finding('nest.meets', {
      subject,
      values: { measured: area, limit: 0, one: windows[other].words, other: windows[one].words },
    }),
  );

interface Edges extends Pick<Drawn, 'windows' | 'holes'> {
  readonly radius: number;
}

function brokenWindows(scope: Scope, subject: string, { windows, holes, radius }: Edges): Finding[] {
  const rounds = holes.map((path) => scope.profileOf([pointsOf(path)]));
  const inHoles = overlapsBetween(
    scope,
    windows.map(({ profile }) => profile),
    rounds,
  ).map(({ one }) => one);
  return windows.flatMap(({ placement, words, profile }, i): Finding[] => {
    const far = outerRings(scope, profile)
      .flat()
      .map(([x, y]) => Math.hypot(x, y));
    const wall = radius - Math.max(...far);
    const inHole = inHoles.includes(i);
    if (!inHole && wall >= leastWall) return [];
    const named = { number: words, placement };
    const values = inHole
      ? ({ which: 'hole', ...named } as const)
      : ({ which: 'rim', ...named, measured: wall, limit: leastWall } as const);
    return [finding('nest.broken', { subject, values })];
  });
}
