import { type Matrix4, moveMesh, type TriangleMesh } from '../geometry/index.ts';
import { measureMesh } from '../mesh/index.ts';
import { cellsOf, isTooFine, mostCells } from './cells.ts';
import type { Conditions } from './conditions.ts';
import { type Forecast, forecastRoom } from './forecast.ts';
import { portOf, type SweptChannel } from './ports.ts';

/** All the forecast of one cavity looks at. Plain data. */
export interface CavityProblem {
  readonly mesh: TriangleMesh;
  /** Brings the mesh into the mold frame. */
  readonly matrix: Matrix4;
  readonly channels: readonly SweptChannel[];
  readonly conditions: Conditions;
  /** Edge of the cells, mm. */
  readonly cell: number;
}

/** A forecast without what is known of each cell. */
export type CavityForecast = Omit<Forecast, 'filling' | 'ranks'> & {
  /** Volume in cells where metal comes, over that of the mesh. */
  readonly seen: number;
};

/** Fills one cavity. Where its cells would be too many, the least edge that fits is taken, and stands in the result. */
export function forecastCavity({
  mesh,
  matrix,
  channels,
  conditions,
  cell,
}: CavityProblem): CavityForecast | undefined {
  const placed = moveMesh(mesh, matrix);
  const tried = cellsOf(placed, cell);
  const cells = isTooFine(tried) ? cellsOf(placed, tried.wouldFit) : tried;
  if (isTooFine(cells)) throw new RangeError(`${mostCells} cells do not fit at the edge said to fit`);
  const ports = channels.map((channel) => portOf(cells, channel)).filter((port) => port.cells.length > 0);
  if (!ports.some(({ kind }) => kind === 'gate')) return undefined;
  const { filling: _, ranks: __, ...forecast } = forecastRoom(cells, ports, conditions);
  return { ...forecast, seen: forecast.reached / measureMesh(placed).volume };
}
