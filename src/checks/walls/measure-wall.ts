import { type FigureName, type Finding, finding, makeFigure, type ReportPart } from '../../findings/index.ts';
import { type Matrix4, midpoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
// Past the room's index: this file brings three and its trees along, which only walls need.
import { distanceTree, meshDistance } from '../../mesh/measure/distance.ts';
import {
  type Boss,
  bossMesh,
  type Check,
  check,
  type Mold,
  makeAlways,
  masterOf,
  type Placement,
  type Process,
  type Sprue,
  sprueMesh,
  type Tools,
} from '../../mold/index.ts';
import { everyProcess, floorOf, isUnder, type ProcessFloor } from '../from-mold/index.ts';
import { distanceAtMost, type SearchBounds, searchBoundsOf, worthMeasuring } from './search-bounds.ts';

const trueDistance = 'true distance of the placed meshes';

/** All walls up to this many times the limit are measured; of those beyond it the nearest alone. */
export const searchFactor = 2;

export interface Cavity {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly estimated: boolean;
}

export const cavityOf = (mold: Mold, { id, master, matrix, estimated }: Placement): Cavity => ({
  id,
  mesh: masterOf(mold, { id, master }).mesh,
  matrix,
  estimated,
});

/** How a wall is reported: under the limit by `code`, where nothing is left of it by `broken`; rigid halves by their floor too. */
export interface WallKind {
  readonly limit: number;
  readonly name: FigureName;
  readonly code: 'walls.thin' | 'walls.boss' | 'walls.well' | 'walls.channel' | 'walls.tab' | 'walls.bolt';
  readonly broken: 'walls.broken' | 'walls.channel' | 'channels.in-cavity' | 'fit.bolt-hits';
  readonly floor?: ProcessFloor;
}

type Body = Omit<Cavity, 'matrix'> & { readonly matrix?: Matrix4 };

/**
 * The wall between two bodies: true distance and the nearest point of each. Nothing where only what is near is asked
 * about and they are farther apart than twice the limit.
 */
export function measureWall(
  a: Body,
  b: Body,
  kind: WallKind,
  { nearOnly = false, memoize = makeAlways }: Pick<Tools, 'nearOnly' | 'memoize'> = {},
): ReportPart {
  const { limit, name, floor } = kind;
  const far = nearOnly ? searchFactor * limit : Number.POSITIVE_INFINITY;
  // By itself, without the limit it is held to: another limit then asks for no other distance.
  const bodies = [a, b].map(({ mesh, matrix }) => ({ mesh, matrix }));
  const answer = memoize('distance of meshes', { bodies, far }, () =>
    meshDistance(distanceTree(a.mesh, a.matrix), distanceTree(b.mesh, b.matrix), far),
  );
  if ('beyond' in answer) {
    if (nearOnly) return {};
    throw new Error(`no distance of ${a.id} and ${b.id}`);
  }
  const { distance, pointA, pointB } = answer;
  const figure = makeFigure(name, {
    subject: `${a.id} ${b.id}`,
    value: distance,
    source: trueDistance,
    estimated: a.estimated || b.estimated,
    places: [pointA, pointB],
  });
  if (distance >= Math.max(limit, floor?.least ?? 0)) return { figures: [figure] };
  const about = { subject: a.id, place: midpoint(pointA, pointB) };
  return { findings: [tooThin(about, b.id, distance, kind)], figures: [figure] };
}

function tooThin(
  about: { readonly subject: string; readonly place: Vec3 },
  other: string,
  measured: number,
  { limit, code, broken, floor }: WallKind,
): Finding {
  // A runner is the one that has to give way.
  if (measured === 0 && broken === 'channels.in-cavity')
    return finding(broken, { ...about, subject: other, values: { measured, limit, other: about.subject } });
  if (measured === 0)
    return finding(broken, { ...about, values: { which: 'meets', measured, limit, other } });
  if (isUnder(measured, floor)) {
    const { least, process: making } = floor;
    return finding('walls.under-process', { ...about, values: { measured, limit: least, other, making } });
  }
  return finding(code, { ...about, values: { which: 'thin', measured, limit, other } });
}

/** What a fixture's mesh is made of: plain data, and made only where it is measured. */
export type Shape =
  | { readonly mesh: TriangleMesh }
  | { readonly boss: Boss; readonly process: Process }
  | { readonly sprue: Sprue; readonly upper: number };

/** Throws KernelFault where a sprue's numbers leave no body. */
export function meshOf(shape: Shape): TriangleMesh {
  if ('mesh' in shape) return shape.mesh;
  if ('sprue' in shape) return sprueMesh(shape.sprue, shape.upper);
  return bossMesh(shape.boss, shape.process);
}

/** Something of the mold that a cavity has to keep away from. */
export interface Fixture extends SearchBounds {
  readonly id: string;
  /** The placement it belongs to, whose cavity it opens into. */
  readonly own?: string;
  readonly kind: WallKind;
  shape(): Shape;
}

interface FixtureInput {
  readonly cavity: Cavity;
  readonly id: string;
  readonly shape: Shape;
  readonly kind: WallKind;
}

interface FixtureWalls extends Pick<Check, 'id' | 'title' | 'follows'> {
  readonly processes?: readonly Process[];
  fixtures(mold: Mold): readonly Fixture[];
}

/** A check of the walls between cavities and fixtures of one sort: those near by, and the cavity nearest to each. */
export function wallsTo({ id, title, follows, processes = everyProcess, fixtures }: FixtureWalls): Check {
  return check<FixtureInput>({
    id,
    title,
    follows,
    processes,
    units: (mold) => {
      const cavities = mold.placements.map((placement) => ({
        placement,
        where: searchBoundsOf(mold, placement),
      }));
      const floor = floorOf(mold);
      return fixtures(mold).flatMap((fixture) => {
        const others = cavities.filter(({ placement }) => placement.id !== fixture.own);
        const gaps = others.map(({ placement: { x, y, reach } }) => fixture.gapTo(x, y, reach));
        const near = worthMeasuring(gaps, searchFactor * fixture.kind.limit, (i) =>
          distanceAtMost(others[i].where, fixture),
        );
        if (near.length === 0) return [];
        const shape = fixture.shape();
        const kind = { ...fixture.kind, ...(floor && { floor }) };
        return near.map((i) => ({
          subject: others[i].placement.id,
          about: [others[i].placement.id, fixture.id],
          input: { cavity: cavityOf(mold, others[i].placement), id: fixture.id, shape, kind },
        }));
      });
    },
    run: ({ cavity, id: other, shape, kind }, tools) => {
      // One mesh, and so one tree, for all cavities it is measured to.
      const { memoize = makeAlways } = tools;
      const mesh = memoize('mesh of a fixture', shape, () => meshOf(shape));
      return measureWall(cavity, { id: other, mesh, estimated: false }, kind, tools);
    },
  });
}
