import {
  compose,
  joinMeshes,
  type Matrix4,
  moveMesh,
  type TriangleMesh,
  translation,
} from '../../geometry/index.ts';
import type { Body, Profile, Scope } from '../../kernel/index.ts';
import { type Master, masterOf, type Placement } from '../../mold/index.ts';
import type { HalfName } from '../making/index.ts';
import { reliefBodies } from './relief.ts';

/** Circles nearer than this are not taken for disjoint, mm. */
const apart = 0.01;
/** A face in the parting plane may leave a sheet of no thickness on its other side; mm3. */
const nothing = 1e-6;

export interface Placed {
  readonly masters: readonly Master[];
  readonly placements: readonly Placement[];
}

/** A master in one lie and sink: placements that differ by a turn about z and a shift share it. */
interface Shape {
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly placements: Placement[];
}

/**
 * Cutters of all cavities for a flat parting plane: each shape is cut at z = 0 once, then turned and shifted to its
 * places; cavities whose bounding circles are apart are joined into one body without uniting them. With `relieve`
 * the air over (lower half) or under (upper half) a cavity belongs to it, up to the parting plane. Gives one function
 * for both halves, so that one half's cutters can be dropped before the other's are made.
 */
export function flatCavities(scope: Scope, placed: Placed, relieve: boolean): (half: HalfName) => Body[] {
  const crowded = crowdedPlacements(placed.placements);
  const cut = shapesOf(placed).map((shape) => ({ shape, pieces: cutAtPlane(scope, shape, relieve) }));
  return (half) => {
    const joined: TriangleMesh[] = [];
    const single: Body[] = [];
    for (const { shape, pieces } of cut) {
      const piece = pieces[half];
      if (!piece) continue;
      for (const { id, matrix } of shape.placements) {
        const there = moveMesh(piece, spin(matrix));
        if (crowded.has(id)) single.push(scope.fromExactMesh(there, id));
        else joined.push(there);
      }
    }
    return joined.length === 0 ? single : [scope.fromExactMesh(joinMeshes(joined), 'cavities'), ...single];
  };
}

/** Every master whole, at its place. */
export function wholeCavities(scope: Scope, placed: Placed): Body[] {
  const { placements } = placed;
  const crowded = crowdedPlacements(placements);
  const joined: TriangleMesh[] = [];
  const single: Body[] = [];
  for (const placement of placements) {
    const mesh = moveMesh(masterOf(placed, placement).mesh, placement.matrix);
    if (crowded.has(placement.id)) single.push(scope.fromExactMesh(mesh, placement.id));
    else joined.push(mesh);
  }
  return joined.length === 0 ? single : [scope.fromExactMesh(joinMeshes(joined), 'cavities'), ...single];
}

/** Ids of placements whose bounding circle touches another's. */
function crowdedPlacements(placements: readonly Placement[]): ReadonlySet<string> {
  const crowded = new Set<string>();
  for (const [i, a] of placements.entries()) {
    for (const b of placements.slice(i + 1)) {
      if (Math.hypot(a.x - b.x, a.y - b.y) > a.reach + b.reach + apart) continue;
      crowded.add(a.id);
      crowded.add(b.id);
    }
  }
  return crowded;
}

function shapesOf(placed: Placed): Shape[] {
  const shapes = new Map<string, Shape>();
  for (const placement of placed.placements) {
    const matrix = compose(transposed(spin(placement.matrix)), placement.matrix);
    const upright = [...matrix.slice(0, 12), 0, 0, matrix[14], 1];
    // Nine decimals: below a float32 step at any size, above the rounding of the turn taken out.
    const key = `${placement.master} ${upright.map((value) => Math.round(value * 1e9)).join(' ')}`;
    const known = shapes.get(key);
    if (known) known.placements.push(placement);
    else
      shapes.set(key, {
        mesh: masterOf(placed, placement).mesh,
        matrix: upright,
        placements: [placement],
      });
  }
  return [...shapes.values()];
}

/**
 * The turn about z and the shift across the plane of a placing matrix: what is left when the first of its columns
 * with a fair part in the plane is turned to point along +x.
 */
function spin(m: Matrix4): Matrix4 {
  const lengths = [0, 1, 2].map((column) => Math.hypot(m[column * 4], m[column * 4 + 1]));
  const longest = Math.max(...lengths);
  const column = lengths.findIndex((length) => length > longest / 2);
  const c = m[column * 4] / lengths[column];
  const s = m[column * 4 + 1] / lengths[column];
  return [c, s, 0, 0, -s, c, 0, 0, 0, 0, 1, 0, m[12], m[13], 0, 1];
}

/** The inverse of a spin. */
function transposed(m: Matrix4): Matrix4 {
  const turn = [m[0], m[4], 0, 0, m[1], m[5], 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
  return compose(turn, translation(-m[12], -m[13], 0));
}

function cutAtPlane(scope: Scope, { mesh, matrix, placements }: Shape, relieve: boolean) {
  const what = placements[0].id;
  const whole = scope.fromMesh(moveMesh(mesh, matrix), what);
  const [above, below] = scope.splitAt(whole, 0, what);
  const piece = (body: Body, half: HalfName): TriangleMesh | undefined => {
    if (!(body.volume() > nothing)) return undefined;
    // Round a master alone all is material that is not the master.
    const material = (profile: Profile, z: number): number =>
      profile.area() - scope.commonArea(profile, scope.slice(whole, z));
    const relief = relieve ? reliefBodies(scope, whole, half, 0, material, what) : [];
    return scope.toMesh(scope.unite([body, ...relief], what));
  };
  const pieces = { lower: piece(below, 'lower'), upper: piece(above, 'upper') };
  scope.drop(above);
  scope.drop(below);
  return pieces;
}
