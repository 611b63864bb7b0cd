import { type Finding, finding } from '../findings/index.ts';
import {
  hole,
  type Outline,
  type Path,
  type Point2,
  placed,
  pointsOf,
  polygon,
  reversed,
} from '../kernel/index.ts';
import { lettersOf } from '../lettering/index.ts';
import { type Boss, type Fixture, type Mold, type Notch, type Part, work } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';
import { holeFit, openingFit } from './fit.ts';
import { plateBody } from './plate-body.ts';
import { type RimCut, rimTrack } from './rim-track.ts';
import { withoutSpots } from './without-spots.ts';

const id = 'registration-jig';
/** Least material beside a pocket, and the ring's width inside of the innermost one. Common practice, mm. */
const leastWall = 1.5;
const innerWidth = 5;
const leastThickness = 4;
const index = { width: 4, depth: 3 } as const;
/** Of the half-round key. Only with this side up does it stand counter-clockwise from the index mark. */
const keyWidth = 6;
const letterHeight = 4;
const degree = Math.PI / 180;

interface JigInput {
  readonly radius: number;
  readonly bosses: readonly Omit<Boss, 'at'>[];
  readonly notches: readonly Omit<Notch, 'at'>[];
  readonly fixture: Pick<Fixture, 'material' | 'clearance' | 'chordError' | 'holeCompensation'>;
}

/**
 * A ring as wide as the disc that drops into the can or onto the disc and holds every nut or boss in its place while
 * it is pressed in: openings through the ring, over the hexagon of a cap nut (which so goes in upright or dome down),
 * over the root of a dome or cone. Index mark (V) at angle 0, the witness notches, and a half-round key.
 */
export const registrationJig: Part = work({
  id,
  title: 'registration jig',
  scope: 'whole',
  processes: ['rubber'],
  jobs: (mold) => (mold.bosses.length > 0 ? [{ subject: id, input: inputFor(mold) }] : []),
  run: (input, { kernel }) => {
    const { outline, engraved } = jigOutline(input);
    const subjects = input.bosses.map((boss) => boss.id);
    const thickness = Math.max(leastThickness, ...input.bosses.map(({ rootDepth }) => rootDepth));
    const title = 'registration jig';
    const solid = kernel.scope((scope) => {
      const body = plateBody(scope, { outline, thickness, engraved }, input.fixture.chordError, title);
      return asSolid(scope, body, onBed(0), { id, title, role: 'jig', subjects });
    });
    const marks = [
      { layer: 'cut', outline, texts: [] },
      { layer: 'engrave', outline: engraved, texts: [] },
    ] as const;
    return {
      solids: [solid],
      drawings: [{ id, title, subjects, marks, thickness, estimated: false }],
      findings: thinFindings(input),
    };
  },
});

function inputFor({ disc, bosses, notches, fixture }: Mold): JigInput {
  const { material, clearance, chordError, holeCompensation } = fixture;
  return {
    radius: disc.radius,
    bosses: withoutSpots(bosses),
    notches: withoutSpots(notches),
    fixture: { material, clearance, chordError, ...(holeCompensation !== undefined && { holeCompensation }) },
  };
}

const fitOf = ({ fixture }: JigInput, boss: Omit<Boss, 'at'>): number =>
  holeFit(fixture, boss.acrossFlats > 0 ? boss.acrossFlats : 2 * boss.headRadius);

/** Radius of the circle round an opening. */
const reachOf = (input: JigInput, boss: Omit<Boss, 'at'>): number =>
  boss.kind === 'cap nut'
    ? (boss.acrossFlats + fitOf(input, boss)) / Math.sqrt(3)
    : boss.headRadius + fitOf(input, boss) / 2;

/** The ring lies loosely in a can as wide as the disc. */
const outerRadius = ({ radius, fixture }: JigInput): number => radius - openingFit(fixture, 2 * radius) / 2;

/** Openings over the hexagons (a corner on +x at turn 0, as the nuts stand) or the roots. */
export function pocketOf(input: JigInput, boss: Omit<Boss, 'at'>): Path {
  if (boss.kind !== 'cap nut') return hole([boss.x, boss.y], reachOf(input, boss));
  const corner = reachOf(input, boss);
  const hexagon = polygon(
    Array.from({ length: 6 }, (_, i): Point2 => {
      const angle = (i * Math.PI) / 3;
      return [corner * Math.cos(angle), corner * Math.sin(angle)];
    }),
  );
  return reversed(placed(hexagon, boss.turnRad, [boss.x, boss.y]));
}

export function jigOutline(input: JigInput): { outline: Outline; engraved: Path[] } {
  const outer = outerRadius(input);
  const nearest = Math.min(...input.bosses.map((boss) => Math.hypot(boss.x, boss.y) - reachOf(input, boss)));
  const inner = Math.max(innerWidth, nearest - innerWidth);
  const cuts: RimCut[] = [
    {
      angleRad: 0,
      width: index.width,
      shape: 'V',
      depth: Math.min(index.depth, roomAt(input, 0, index.width) / 2),
    },
    ...input.notches.map((notch): RimCut => ({ ...notch, shape: 'V' })),
    { angleRad: keyAngle(input), width: keyWidth, shape: 'round', depth: keyWidth / 2 },
  ];
  const ring = nearest > innerWidth ? [hole([0, 0], inner)] : [];
  const outline = [rimTrack(outer, cuts), ...ring, ...input.bosses.map((boss) => pocketOf(input, boss))];
  return { outline, engraved: label(input, inner, outer) };
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
  for (let step = 20; step < 175; step += 5) if (clear(step * degree)) return step * degree;
  return 20 * degree;
}

/** What to lay up, where the ring has room for it; else nothing. */
function label(input: JigInput, inner: number, outer: number): Path[] {
  const middle = (inner + outer) / 2;
  for (const turn of [270, 240, 300, 210, 330, 30, 60, 90, 150]) {
    const angleRad = turn * degree;
    const letters = lettersOf({
      words: 'THIS SIDE UP',
      at: [middle * Math.cos(angleRad), middle * Math.sin(angleRad)],
      height: letterHeight,
      turnRad: angleRad + Math.PI / 2,
      anchor: 'middle',
    });
    const points = letters.flatMap((path) => pointsOf(path));
    const clear = points.every(([x, y]) => {
      const far = Math.hypot(x, y);
      const away = input.bosses.every(
        (boss) => Math.hypot(boss.x - x, boss.y - y) > reachOf(input, boss) + 1,
      );
      return far > inner + 1 && far < outer - index.depth - 1 && away;
    });
    if (clear) return letters;
  }
  return [];
}

/** Openings too near the edge or each other. */
function thinFindings(input: JigInput): Finding[] {
  const outer = outerRadius(input);
  return input.bosses.flatMap((boss, i) => {
    const toRim = outer - Math.hypot(boss.x, boss.y) - reachOf(input, boss);
    const toOthers = input.bosses
      .slice(0, i)
      .map(
        (other) =>
          Math.hypot(boss.x - other.x, boss.y - other.y) - reachOf(input, boss) - reachOf(input, other),
      );
    const wall = Math.min(toRim, ...toOthers);
    if (wall >= leastWall) return [];
    return [
      finding('jig.thin', {
        subject: id,
        place: [boss.x, boss.y, 0],
        measured: { value: wall, unit: 'mm' },
        limit: { value: leastWall, unit: 'mm' },
        says: `The registration jig has ${wall.toFixed(1)} mm of material beside the opening for ${boss.id}.`,
      }),
    ];
  });
}
