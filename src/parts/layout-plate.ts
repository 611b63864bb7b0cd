import { type Finding, finding } from '../findings/index.ts';
import {
  circle,
  type Drawing,
  hole,
  line,
  type Matrix4,
  moveMesh,
  type Outline,
  type Path,
  type Point2,
  type Profile,
  pointsOf,
  polygon,
  reversed,
  type Scope,
  type TriangleMesh,
} from '../kernel/index.ts';
import { lettersOf } from '../lettering/index.ts';
import { heightAt, type Mold, type Part, type PartingSurface, type Sprue, work } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';
import { openingFit } from './fit.ts';
import { plateBody } from './plate-body.ts';
import { placeLabels } from './plate-labels.ts';
import { withoutSpots } from './without-spots.ts';

const id = 'layout-plate';
/** Millimeters; common practice. */
const thickness = 3;
const digits = 3;
const ticks = { short: 2, long: 4 } as const;
/** Points of an outline nearer than this to the line between their neighbors are left out. */
const tolerance = 0.02;
/** What two outlines may share by rounding, mm2. */
const touch = 1e-3;
const degree = Math.PI / 180;
const inch = 25.4;

interface PlateMaster {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly lowest: number;
  readonly turnRad: number;
}

interface PlateInput {
  readonly radius: number;
  readonly sprue?: Omit<Sprue, 'at'>;
  readonly bosses: readonly Hole[];
  readonly masters: readonly PlateMaster[];
  readonly surface: PartingSurface;
  readonly fixture: Pick<Mold['fixture'], 'material' | 'clearance' | 'chordError'>;
  readonly estimated: boolean;
}

interface Hole {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * A plate as large as the disc that shows where everything goes: openings in the outline each master has at the
 * parting surface, with clearance, so that it drops into its place; holes for the heads of the bosses and the sprue
 * form's shaft; round the rim a graduation in degrees, along +x one in mm and along +y one in inches from the axis;
 * beside each opening its name, sink and turn. With it the template for the parting paper: the same outlines without
 * clearance.
 */
export const layoutPlate: Part = work({
  id,
  title: 'layout plate',
  scope: 'whole',
  processes: ['rubber'],
  jobs: (mold) => (mold.placements.length > 0 ? [{ subject: id, input: inputFor(mold) }] : []),
  run: (input, { kernel }) =>
    kernel.scope((scope) => {
      const { masters, fixture, estimated } = input;
      const exact = masters.map((master) => partingProfile(scope, master, input.surface));
      const wider = exact.map((profile) => scope.inset(profile, -openingFit(fixture, 30) / 2, tolerance));
      const openings = wider.map((profile) => outer(scope, profile));
      const plate = plateOutline(input, openings);
      const scales = graduations(input, openings);
      const engraved = [...scales, ...labels(input, openings, scales)];
      const subjects = masters.map((master) => master.id);
      const title = 'layout plate';
      const body = plateBody(scope, { outline: plate, thickness, engraved }, fixture.chordError, title);
      const solid = asSolid(scope, body, onBed(0), { id, title, role: 'layout plate', subjects, estimated });
      const drawing: Drawing = {
        id,
        title,
        subjects,
        thickness,
        estimated,
        marks: [
          { layer: 'cut', outline: plate, texts: [] },
          { layer: 'engrave', outline: engraved, texts: [] },
        ],
      };
      const papers = exact.map((profile) => outer(scope, scope.inset(profile, 0, tolerance)));
      return {
        solids: [solid],
        drawings: [drawing, paper(input, papers)],
        findings: overlaps(scope, input, wider),
      };
    }),
});

function inputFor({ disc, sprue, bosses, masters, placements, parting, fixture }: Mold): PlateInput {
  const meshes = new Map(masters.map(({ id: master, mesh }) => [master, mesh]));
  const { material, clearance, chordError } = fixture;
  return {
    radius: disc.radius,
    ...(sprue && { sprue }),
    bosses: withoutSpots(bosses).map(({ x, y, headRadius: radius }) => ({ x, y, radius })),
    masters: placements.map(({ id: placement, master, matrix, lowest, turnRad }) => {
      const mesh = meshes.get(master);
      if (!mesh) throw new RangeError(`placement of ${master}: there is no such master`);
      return { id: placement, mesh, matrix, lowest, turnRad };
    }),
    surface: parting,
    fixture: { material, clearance, chordError },
    estimated: placements.some((one) => one.estimated),
  };
}

/**
 * Where a master meets the parting surface, seen from above: heights are counted from the surface, which bends the
 * master but keeps it closed, and the section at 0 is taken. Its shadow where it does not reach the surface.
 */
function partingProfile(
  scope: Scope,
  { id: placement, mesh, matrix }: PlateMaster,
  surface: PartingSurface,
): Profile {
  const { positions, triangles } = moveMesh(mesh, matrix);
  const level = positions.slice();
  for (let i = 0; i < level.length; i += 3) level[i + 2] -= heightAt(surface, level[i], level[i + 1]);
  const body = scope.fromExactMesh({ positions: level, triangles }, placement);
  const section = scope.slice(body, 0);
  return section.isEmpty() ? scope.shadow(body) : section;
}

/** Outlines without their islands, which would drop out. */
const outer = (scope: Scope, profile: Profile): Point2[][] =>
  scope
    .outlinesOf(profile)
    .filter((ring) => signedArea(ring) > 0)
    .map((ring) => ring.map(([x, y]): Point2 => [x, y]));

const signedArea = (ring: readonly Point2[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

const bossHoles = ({ bosses, fixture }: PlateInput): Path[] =>
  bosses.map(({ x, y, radius }) => hole([x, y], radius + openingFit(fixture, 2 * radius) / 2));

function shaftHole({ sprue, fixture }: PlateInput): Path[] {
  if (!sprue) return [];
  const foot = sprue.holeRadius + sprue.fillet;
  return [hole([0, 0], foot + openingFit(fixture, 2 * foot) / 2)];
}

const plateOutline = (input: PlateInput, openings: readonly (readonly Point2[][])[]): Outline => [
  circle([0, 0], input.radius),
  ...shaftHole(input),
  ...bossHoles(input),
  ...openings.flat().map((ring) => reversed(polygon(ring))),
];

/** Paper between the halves: it leaves out masters, bosses and the well. */
function paper(input: PlateInput, outlines: readonly (readonly Point2[][])[]): Drawing {
  const { radius, sprue, bosses, masters, estimated } = input;
  return {
    id: 'parting-paper',
    title: 'template for the parting paper',
    subjects: masters.map((master) => master.id),
    estimated,
    marks: [
      {
        layer: 'cut',
        outline: [
          circle([0, 0], radius),
          ...(sprue ? [hole([0, 0], sprue.wellRadius)] : []),
          ...bosses.map(({ x, y, radius: head }) => hole([x, y], head)),
          ...outlines.flat().map((ring) => reversed(polygon(ring))),
        ],
        texts: [],
      },
      { layer: 'engrave', outline: [line([radius - 10, 0], [radius, 0])], texts: [] },
    ],
  };
}

/** Ticks and numbers that do not run into an opening. */
function graduations(input: PlateInput, openings: readonly (readonly Point2[][])[]): Path[] {
  const { radius } = input;
  const shaft = shaftHole(input).flatMap((path) => pointsOf(path));
  const inner = Math.max(0, ...shaft.map(([x]) => x)) + ticks.long;
  const rings = [...openings.flat(), ...bossHoles(input).map((path) => pointsOf(path))];
  const clear = (path: Path): boolean =>
    pointsOf(path).every((point) => !rings.some((ring) => holds(ring, point)));
  const spoke = (angle: number, from: number, to: number): Path =>
    line([from * Math.cos(angle), from * Math.sin(angle)], [to * Math.cos(angle), to * Math.sin(angle)]);
  const rim = Array.from({ length: 72 }, (_, i) => {
    const long = i % 2 === 0 ? ticks.long : ticks.short;
    return [
      spoke(i * 5 * degree, radius - 1 - long, radius - 1),
      ...(i % 6 === 0 ? degreesAt(i * 5, radius) : []),
    ];
  });
  const millimeters = marksAlong(inner, radius, 5).map((s) => {
    const long = s % 10 === 0 ? ticks.long : ticks.short;
    return [
      line([s, -long / 2], [s, long / 2]),
      ...(s % 20 === 0 ? lettersAt(String(s), [s, -long / 2 - 4]) : []),
    ];
  });
  const inches = marksAlong(inner, radius, inch / 4).map((s) => {
    const whole = Math.abs(s / inch - Math.round(s / inch)) < 1e-9;
    const long = whole ? ticks.long : ticks.short;
    return [
      line([-long / 2, s], [long / 2, s]),
      ...(whole ? lettersAt(`${Math.round(s / inch)} IN`, [long / 2 + 6, s - digits / 2]) : []),
    ];
  });
  return [...rim, ...millimeters, ...inches].filter((group) => group.every(clear)).flat();
}

const marksAlong = (inner: number, radius: number, step: number): number[] =>
  Array.from({ length: Math.floor(radius / step) }, (_, i) => (i + 1) * step).filter(
    (s) => s > inner && s < radius - ticks.long - 2 * digits - 2,
  );

const lettersAt = (words: string, at: Point2, turnRad = 0): Path[] =>
  lettersOf({ words, at, height: digits, turnRad, anchor: 'middle' });

const degreesAt = (degrees: number, radius: number): Path[] => {
  const far = radius - 2 - ticks.long - digits;
  const angle = degrees * degree;
  return lettersAt(String(degrees), [far * Math.cos(angle), far * Math.sin(angle)], angle - Math.PI / 2);
};

/** Whether a point is inside a ring (even-odd rule). */
function holds(ring: readonly Point2[], [x, y]: Point2): boolean {
  return ring.reduce((inside, [ax, ay], i) => {
    const [bx, by] = ring[(i + ring.length - 1) % ring.length];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}

/** Beside each opening its name, or, where there is no room for the whole, less of it. */
function labels(
  input: PlateInput,
  openings: readonly (readonly Point2[][])[],
  scales: readonly Path[],
): Path[] {
  const blocked = [
    ...openings.flat(),
    ...bossHoles(input).map((path) => pointsOf(path)),
    ...shaftHole(input).map((path) => pointsOf(path)),
  ];
  const wishes = input.masters.map(({ id: placement, lowest, turnRad }, i) => ({
    rings: openings[i],
    texts: [
      [placement, `${Math.max(0, -lowest).toFixed(1)} DEEP`, `TURN ${Math.round(turnRad / degree)}`],
      [placement, `${Math.max(0, -lowest).toFixed(1)}, ${Math.round(turnRad / degree)}`],
      [placement],
    ],
  }));
  return placeLabels(wishes, blocked, scales, input.radius - 2 - ticks.long - 2 * digits);
}

function overlaps(scope: Scope, { masters }: PlateInput, profiles: readonly Profile[]): Finding[] {
  const boxes = profiles.map((profile) => profile.bounds());
  return masters.flatMap((master, i) =>
    masters.slice(0, i).flatMap((other, j) => {
      const [a, b] = [boxes[i], boxes[j]];
      const apart = [0, 1].some((axis) => a.min[axis] > b.max[axis] || b.min[axis] > a.max[axis]);
      const shared = apart ? 0 : scope.commonArea(profiles[i], profiles[j]);
      if (shared <= touch) return [];
      return [
        finding('layout-plate.overlap', {
          subject: id,
          measured: { value: shared, unit: 'mm2' },
          limit: { value: 0, unit: 'mm2' },
          says: `On the layout plate the openings for ${other.id} and ${master.id} run into each other.`,
        }),
      ];
    }),
  );
}
