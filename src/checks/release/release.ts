import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import {
  boundsOf,
  compose,
  type Matrix4,
  memoPerMesh,
  moveMesh,
  movePoint,
  rotation,
  type TriangleMesh,
  translation,
  type Vec3,
} from '../../geometry/index.ts';
import {
  type Check,
  check,
  closedEyes,
  cropSheet,
  type Mold,
  masterOf,
  type Placement,
  type Process,
  type Sheet,
  undercutColumns,
} from '../../mold/index.ts';
import { rigidUndercut } from '../../tables/index.ts';
import { fixed } from '../../wording/index.ts';

/** Columns stand this far apart, mm, or farther where a master would need more of them than `mostColumns`. */
const finestCell = 0.08;
const mostColumns = 60_000;

interface ReleaseInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  /** Of the cavity, mm3. */
  readonly volume: number;
  readonly surface: Sheet;
  readonly process: Process;
  readonly relieve: boolean;
  /** Rubber: greatest share of the volume. */
  readonly limit: number;
  readonly estimated: boolean;
}

/**
 * What each half would have to pass through when it is lifted straight off a casting: volume on each side, depth and
 * the deepest place, share of the cavity. Depths count only where two by two columns have them, so what is narrower
 * than the columns can tell is not judged. Rubber bends, and is held to a share of the cavity; a rigid half to 0.05 mm,
 * or, where its undercuts are filled, to nothing: what that adds to the casting is said.
 */
export const release: Check = check<ReleaseInput>({
  id: 'release',
  title: 'Release of the castings',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) =>
    mold.placements.map((placement) => {
      const { id } = placement;
      return { subject: id, about: [id], input: inputOf(mold, placement) };
    }),
  run: (input) => {
    const found = input.surface.flat
      ? onPlane(input)
      : judge(moveMesh(input.mesh, input.matrix), input.surface);
    return { findings: findingsOf(input, found), figures: figuresOf(input, found) };
  },
});

function inputOf(mold: Mold, { id, master, matrix, scale, x, y, reach, estimated }: Placement): ReleaseInput {
  const { mesh, measures } = masterOf(mold, { id, master });
  return {
    id,
    mesh,
    matrix,
    volume: Math.abs(measures.volume) * scale ** 3,
    surface: cropSheet(mold.parting, { min: [x - reach, y - reach], max: [x + reach, y + reach] }),
    process: mold.process,
    relieve: mold.fixture.relieve,
    limit: mold.limits.undercutShare,
    estimated,
  };
}

interface Side {
  /** mm3. */
  readonly volume: number;
  /** Greatest depth that two by two columns share, mm, and where. */
  readonly depth: number;
  readonly place: Vec3;
}

/** Handles that shut rubber in on all sides, and how thick it is in the thickest. */
interface Eyes {
  readonly count: number;
  readonly bridge: Side;
}

interface Judged {
  readonly cell: number;
  readonly eyes: Eyes;
  readonly lower: Side;
  readonly upper: Side;
}

/** A placed mesh against the sheet over it. */
function judge(mesh: TriangleMesh, surface: Sheet): Judged {
  const { min, max } = boundsOf(mesh.positions);
  const cell = Math.max(finestCell, Math.sqrt(((max[0] - min[0]) * (max[1] - min[1])) / mostColumns));
  const { grid, below, above, air, metal, sheet } = undercutColumns(mesh, surface, cell);
  const { nx, ny, x0, y0 } = grid;
  const side = (depths: Float32Array): Side => {
    let sum = 0;
    for (const depth of depths) sum += depth;
    let depth = 0;
    let node = 0;
    for (let j = 0; j + 1 < ny; j++) {
      for (let k = j * nx; k + 1 < (j + 1) * nx; k++) {
        if (!(depths[k] > depth)) continue;
        const shared = Math.min(depths[k], depths[k + 1], depths[k + nx], depths[k + nx + 1]);
        if (shared <= depth) continue;
        depth = shared;
        node = k;
      }
    }
    const [i, j] = [node % nx, Math.floor(node / nx)];
    const place: Vec3 = [x0 + (i + 0.5) * cell, y0 + (j + 0.5) * cell, sheet ? sheet[node] || 0 : 0];
    return { volume: sum * cell * cell, depth, place };
  };
  const eyes = { count: closedEyes(mesh, grid, metal), bridge: side(air) };
  return { cell, eyes, lower: side(below), upper: side(above) };
}

const liesOf = memoPerMesh(() => new Map<string, Judged>());

/** On the plane, where a placement stands and how it is turned changes nothing: each lie and sink is measured once. */
function onPlane({ mesh, matrix, surface }: ReleaseInput): Judged {
  const { upright, back } = withoutTurn(matrix);
  const lies = liesOf(mesh);
  const key = upright.join();
  const found = lies.get(key) ?? judge(moveMesh(mesh, upright), surface);
  lies.set(key, found);
  const move = (side: Side): Side => ({ ...side, place: movePoint(back, side.place) });
  const eyes = { ...found.eyes, bridge: move(found.eyes.bridge) };
  return { ...found, eyes, lower: move(found.lower), upper: move(found.upper) };
}

/**
 * The matrix without its place on the plane and its turn about the vertical, and the way back. Rounded to 1e-9 so that
 * placements that differ in these alone get the same.
 */
function withoutTurn(matrix: Matrix4): { upright: Matrix4; back: Matrix4 } {
  const scale = Math.hypot(matrix[0], matrix[1], matrix[2]);
  // Of three square axes one at least is no steeper than 36 degrees; the first that is well off the vertical serves.
  const axis = [0, 4, 8].find((at) => Math.hypot(matrix[at], matrix[at + 1]) > 0.4321 * scale) ?? 0;
  const turn = Math.atan2(matrix[axis + 1], matrix[axis]);
  const rotated = compose(rotation('z', -turn), translation(-matrix[12], -matrix[13], 0), matrix);
  const upright = rotated.map((value) => Math.round(value * 1e9) / 1e9) as unknown as Matrix4;
  return { upright, back: compose(translation(matrix[12], matrix[13], 0), rotation('z', turn)) };
}

function figuresOf({ id, volume, estimated }: ReleaseInput, { cell, lower, upper }: Judged): Figure[] {
  const source = `air in columns ${fixed(cell, 2)} mm apart between the master and the parting surface`;
  const figure = (name: FigureName, value: number, place?: Vec3): Figure =>
    makeFigure(name, { subject: id, value, source, estimated, ...(place && { places: [place] }) });
  return [
    figure('undercut.lower', lower.volume),
    figure('undercut.upper', upper.volume),
    figure('undercut.depth-lower', lower.depth, lower.place),
    figure('undercut.depth-upper', upper.depth, upper.place),
    ...(volume > 0 ? [figure('undercut.share', (lower.volume + upper.volume) / volume)] : []),
  ];
}

function findingsOf(input: ReleaseInput, { cell, eyes, lower, upper }: Judged): Finding[] {
  const { id, volume, process, relieve, limit } = input;
  const [half, deepest] =
    lower.depth >= upper.depth ? (['lower', lower] as const) : (['upper', upper] as const);
  const about = { subject: id, place: deepest.place };
  const amount = lower.volume + upper.volume;
  if (process !== 'rigid') {
    const shut = eyesOf(id, eyes);
    if (!(amount > limit * volume)) return shut;
    const values = { measured: amount / volume, limit, volume: amount, depth: deepest.depth };
    return [finding('release.undercut', { ...about, values }), ...shut];
  }
  if (deepest.depth <= rigidUndercut) return [];
  const values = { measured: deepest.depth, limit: rigidUndercut, volume: amount };
  return relieve
    ? [finding('release.relieved', { ...about, values })]
    : [finding('release.locked', { ...about, values: { ...values, half, cell } })];
}

/** However little of the cavity it is, rubber that goes through an eye holds the casting until it is torn. */
function eyesOf(subject: string, { count, bridge }: Eyes): Finding[] {
  if (count === 0) return [];
  const values = { count, bridge: bridge.depth };
  return [finding('release.eye', { subject, place: bridge.place, values })];
}
