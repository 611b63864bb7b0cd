import type { UnitSystem } from '../../findings/index.ts';
import { boundsOf, moveMesh } from '../../geometry/index.ts';
import { silhouette } from '../../mesh/index.ts';
import type { Solid } from '../../mold/index.ts';
import type { Build } from '../build.ts';
import type { Shadow } from './disc-view.ts';
import { bare, both, degrees } from './names.ts';
import type { Column, Paper } from './paper.ts';

/** A build-up as it lies in the mold: middle and size of the box round it, mm, and its footprint. */
export interface LaidBuildUp extends Shadow {
  readonly title: string;
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

/** All build-ups of a build, in its order; `cell` is the grid of their footprints, mm. */
export const laidBuildUps = ({ solids }: Build, cell: number): LaidBuildUp[] =>
  solids.flatMap(({ solid }) => (solid.role === 'build-up' ? [laid(solid, cell)] : []));

function laid({ id, title, mesh, toMold }: Solid, cell: number): LaidBuildUp {
  const inMold = moveMesh(mesh, toMold);
  const { min, max } = boundsOf(inMold.positions);
  const [a, b, height] = [0, 1, 2].map((axis) => max[axis] - min[axis]);
  return {
    id: id.replace(/^build-up-0*/, ''),
    title,
    x: (min[0] + max[0]) / 2,
    y: (min[1] + max[1]) / 2,
    rings: silhouette(inMold, cell),
    length: Math.max(a, b),
    width: Math.min(a, b),
    height,
  };
}

/** Which build-up goes where, how large it is and how high it stands. */
export function buildUpTable(
  paper: Paper,
  buildUps: readonly LaidBuildUp[],
  units: UnitSystem,
  pageTitle: string,
): void {
  if (buildUps.length === 0) return;
  paper.section('Build-ups', pageTitle);
  const columns: Column[] = [
    { title: 'no.', share: 0.08 },
    { title: 'where', share: 0.22 },
    { title: 'radius of its middle', share: 0.18, align: 'right' },
    { title: 'angle', share: 0.09, align: 'right' },
    { title: 'length x width', share: 0.27, align: 'right' },
    { title: 'height', share: 0.16, align: 'right' },
  ];
  const rows = buildUps.map(({ id, title, x, y, length, width, height }) => [
    id,
    title.replace(/^build-up \S+ /, ''),
    both(units, Math.hypot(x, y)),
    `${degrees(Math.atan2(y, x))}°`,
    boxText(units, length, width),
    both(units, height),
  ]);
  paper.table(columns, rows, pageTitle);
}

/** `12.0 x 8.0 mm (0.47 x 0.31 in)`, or the other way round. */
function boxText(units: UnitSystem, length: number, width: number): string {
  const metric = `${bare('metric', length)} x ${bare('metric', width)} mm`;
  const inch = `${bare('inch', length)} x ${bare('inch', width)} in`;
  return units === 'metric' ? `${metric} (${inch})` : `${inch} (${metric})`;
}
