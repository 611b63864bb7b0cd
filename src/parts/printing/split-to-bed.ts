import { type Finding, finding } from '../../findings/index.ts';
import { boundsOf, compose, inverse, movePoint, rotation } from '../../geometry/index.ts';
import { type Body, type Kernel, KernelFault, type Scope } from '../../kernel/index.ts';
import { kindOfRole } from '../../kinds/index.ts';
import type { Bed, Mold, Solid } from '../../mold/index.ts';
import { asSolid } from '../making/index.ts';
import { sector, tongue } from './joint.ts';
import { extremes, type Obstacle, obstaclesOf } from './obstacles.ts';
import { chooseSeams, fits, type Room, type Seam, type Whole } from './seams.ts';

/** A cut nearer to an outline or boss than this is said, mm. Common practice, no published source. */
const closest = 2;

/** Share of a joint's area that may be lost by rounding and its outline still be all material. */
const rounding = 1e-5;

/** Heights at which a joint is looked at, as shares: clear of chamfers and engraving. */
const levels = [0.15, 0.5, 0.85];

export interface Split {
  readonly solids: readonly Solid[];
  readonly findings: readonly Finding[];
}

/**
 * Solids larger than the plan's bed, cut into sectors about the disc's axis with a dovetail across each cut, each
 * piece turned so that it fits; the others as they are. Pieces slide together along z. Without a bed nothing is cut.
 */
export function splitToBed(solids: readonly Solid[], mold: Mold, kernel: Kernel): Split {
  const { bed } = mold.fixture;
  if (!bed) return { solids, findings: [] };
  const room = { x: bed.x - 2 * bed.margin, y: bed.y - 2 * bed.margin };
  const split = solids.map((solid): Split => {
    if (!kindOfRole(solid.role).printable) return { solids: [solid], findings: [] };
    const high = heightFinding(solid, bed);
    if (fits(pointsOf(solid), room) === 0) return { solids: [solid], findings: high };
    const cut = cutOrWhole(solid, obstaclesOf(mold, solid.role), { room, bed, kernel });
    return { solids: cut.solids, findings: [...high, ...cut.findings] };
  });
  return { solids: split.flatMap((one) => one.solids), findings: split.flatMap((one) => one.findings) };
}

interface Making {
  readonly room: Room;
  readonly bed: Bed;
  readonly kernel: Kernel;
}

/** A cut the kernel cannot make leaves the solid whole, and says so. */
function cutOrWhole(solid: Solid, obstacles: readonly Obstacle[], making: Making): Split {
  try {
    return fitOne(solid, obstacles, making);
  } catch (error) {
    if (!(error instanceof KernelFault)) throw error;
    const values = { which: 'failed', title: solid.title, fault: error.message } as const;
    return { solids: [solid], findings: [finding('bed.too-small', { subject: solid.id, values })] };
  }
}

function fitOne(solid: Solid, obstacles: readonly Obstacle[], { room, bed, kernel }: Making): Split {
  return kernel.scope((scope) => {
    const body = scope.fromExactMesh(solid.mesh, solid.title);
    const turn = fits(pointsOf(solid), room);
    if (turn !== undefined) return { solids: [rotated(scope, body, solid, turn)], findings: [] };
    const whole = wholeOf(scope, body, solid, obstacles);
    const seams = chooseSeams(whole, room);
    if (!seams) return { solids: [solid], findings: [noJoint(solid, bed)] };
    const pieces = piecesOf(scope, body, solid, { seams, gap: bed.joint, far: 4 * whole.radius });
    const done = pieces.map((piece, k) => finish(scope, piece, solid, { k, of: pieces.length, room }));
    return {
      solids: done,
      findings: [saySplit(solid, seams, bed), ...tooNear(solid, seams), ...textsCut(solid, seams)],
    };
  });
}

const pointsOf = ({ mesh: { positions } }: Solid): [number, number][] =>
  Array.from({ length: positions.length / 3 }, (_, i) => [positions[i * 3], positions[i * 3 + 1]]);

/** Obstacles as they lie in the solid's own frame, which shares the disc's axis. */
function wholeOf(scope: Scope, body: Body, solid: Solid, obstacles: readonly Obstacle[]): Whole {
  const toPrint = inverse(solid.toMold);
  const here = obstacles.map(({ id, corners }) => {
    const moved = corners.map(([x, y]) => movePoint(toPrint, [x, y, 0]));
    const flat = moved.map(([x, y]) => [x, y] as const);
    // A half turned over is seen from below: its outlines then run the other way round.
    return { id, corners: toPrint[10] < 0 ? flat.reverse() : flat };
  });
  const { min, max } = boundsOf(solid.mesh.positions);
  const texts = (solid.lettered ?? []).map(
    (corners): Obstacle => ({ id: 'a text on it', text: true, corners }),
  );
  const windows = (solid.windows ?? []).map(
    ({ id, corners }): Obstacle => ({ id, corners: extremes(corners) }),
  );
  const sections = levels.map((share) => scope.slice(body, min[2] + share * (max[2] - min[2])));
  const radius = pointsOf(solid).reduce((far, [x, y]) => Math.max(far, Math.hypot(x, y)), 0);
  return {
    radius,
    obstacles: [...here, ...windows, ...texts],
    solidLevels: (outline) => {
      const tried = scope.profileOf([outline]);
      const least = (1 - rounding) * tried.area();
      return sections.filter((profile) => scope.commonArea(tried, profile) > least).length;
    },
  };
}

interface Cut {
  readonly seams: readonly Seam[];
  readonly gap: number;
  readonly far: number;
}

/** Sector k, with the tongue over the seam at its end, less the socket in the seam at its start. */
function piecesOf(scope: Scope, body: Body, solid: Solid, { seams, gap, far }: Cut): Body[] {
  const { min, max } = boundsOf(solid.mesh.positions);
  const through = (outline: readonly (readonly [number, number])[], what: string): Body =>
    scope.extrude([outline], min[2] - 1, max[2] + 1, what);
  return seams.map(({ angleRad, joint }, k) => {
    const next = seams[(k + 1) % seams.length];
    const end = k + 1 < seams.length ? next.angleRad : next.angleRad + 2 * Math.PI;
    const what = `piece ${k + 1} of ${solid.title}`;
    const wedge = scope.unite(
      [through(sector(angleRad, end, far), what), through(tongue(next.joint, next.angleRad), what)],
      what,
    );
    const cutter = scope.subtract(wedge, [through(tongue(joint, angleRad, gap), what)], what);
    return scope.expectSolid(scope.intersect([body, cutter], what), what);
  });
}

function finish(
  scope: Scope,
  piece: Body,
  solid: Solid,
  { k, of, room }: { readonly k: number; readonly of: number; readonly room: Room },
): Solid {
  const { positions } = scope.toMesh(piece);
  const points = Array.from({ length: positions.length / 3 }, (_, i): [number, number] => [
    positions[i * 3],
    positions[i * 3 + 1],
  ]);
  return rotated(scope, piece, pieceNaming(solid, k + 1, of), fits(points, room) ?? 0);
}

const pieceNaming = (solid: Solid, number: number, of: number): Solid => ({
  ...solid,
  id: `${solid.id}-piece-${number}`,
  title: `${solid.title}, piece ${number} of ${of}`,
  subjects: [...solid.subjects, solid.id],
});

/** Turned to fit; where its texts and windows are is of no more use. */
function rotated(scope: Scope, body: Body, whole: Solid, angleRad: number): Solid {
  const { lettered: _, windows: __, ...solid } = whole;
  const made = asSolid(scope, body, rotation('z', angleRad), solid);
  return { ...solid, ...made, toMold: compose(solid.toMold, made.toMold) };
}

function heightFinding(solid: Solid, bed: Bed): Finding[] {
  const { min, max } = boundsOf(solid.mesh.positions);
  const height = max[2] - min[2];
  if (bed.z === undefined || height <= bed.z) return [];
  return [
    finding('bed.too-high', {
      subject: solid.id,
      values: { measured: height, limit: bed.z, title: solid.title },
    }),
  ];
}

function textsCut(solid: Solid, seams: readonly Seam[]): Finding[] {
  const count = seams.reduce((sum, seam) => sum + seam.textsCut, 0);
  if (count === 0) return [];
  return [
    finding('bed.cuts-text', {
      subject: solid.id,
      values: { measured: count, limit: 0, title: solid.title },
    }),
  ];
}

const noJoint = (solid: Solid, bed: Bed): Finding =>
  finding('bed.too-small', {
    subject: solid.id,
    values: {
      which: 'no-joint',
      limit: Math.min(bed.x, bed.y),
      title: solid.title,
      width: bed.x,
      depth: bed.y,
    },
  });

const saySplit = (solid: Solid, seams: readonly Seam[], bed: Bed): Finding =>
  finding('bed.split', {
    subject: solid.id,
    values: {
      measured: seams.length,
      title: solid.title,
      width: bed.x,
      depth: bed.y,
      joint: bed.joint,
    },
  });

function tooNear(solid: Solid, seams: readonly Seam[]): Finding[] {
  const near = [...seams].sort((a, b) => a.clearance - b.clearance)[0];
  if (near.clearance >= closest || !near.nearest) return [];
  return [
    finding('bed.cuts-outline', {
      subject: solid.id,
      values: {
        which: near.clearance < 0 ? 'through' : 'near',
        measured: near.clearance,
        limit: closest,
        title: solid.title,
        nearest: near.nearest,
      },
    }),
  ];
}
