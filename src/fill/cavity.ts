import { type Matrix4, moveMesh, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { measureMesh } from '../mesh/index.ts';
import { type Cells, cellsOf, isTooFine, middleOf, mostCells } from './cells.ts';
import { clearanceOf } from './clearance.ts';
import type { Conditions, Pocket, Port } from './conditions.ts';
import { airLeft, assumptions, type Forecast, fillRoom, forecastRoom } from './forecast.ts';
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

/** A cavity in cells, to be filled through one set of gates and vents after another. */
export interface CavityRoom {
  /** Undefined where no gate opens into it. */
  forecast(channels: readonly SweptChannel[]): CavityForecast | undefined;
  /** Air that stays under the usual assumption alone; quicker. */
  air(channels: readonly SweptChannel[]): readonly Pocket[] | undefined;
  /** Middle of a cell of a pocket, mm. */
  middle(cell: number): Vec3;
}

/** Where its cells would be too many, the least edge that fits is taken, and stands in the forecast. */
export function cavityRoom({ mesh, matrix, conditions, cell }: Omit<CavityProblem, 'channels'>): CavityRoom {
  const placed = moveMesh(mesh, matrix);
  const tried = cellsOf(placed, cell);
  const cells = isTooFine(tried) ? cellsOf(placed, tried.wouldFit) : tried;
  if (isTooFine(cells)) throw new RangeError(`${mostCells} cells do not fit at the edge said to fit`);
  const { volume } = measureMesh(placed);
  const clearance = clearanceOf(cells);
  return {
    middle: (c) => middleOf(cells, c),
    forecast: (channels) => {
      const ports = portsOf(cells, channels);
      if (!ports) return undefined;
      const { filling: _, ranks: __, ...forecast } = forecastRoom(cells, ports, conditions, clearance);
      return { ...forecast, seen: forecast.reached / volume };
    },
    air: (channels) => {
      const ports = portsOf(cells, channels);
      return ports && airLeft(fillRoom(cells, ports, conditions, clearance), conditions, assumptions[0].lock);
    },
  };
}

/** Fills one cavity. */
export const forecastCavity = (problem: CavityProblem): CavityForecast | undefined =>
  cavityRoom(problem).forecast(problem.channels);

/** Those that open into it, if one of them is a gate. */
function portsOf(cells: Cells, channels: readonly SweptChannel[]): Port[] | undefined {
  const ports = channels.map((channel) => portOf(cells, channel)).filter((port) => port.cells.length > 0);
  return ports.some(({ kind }) => kind === 'gate') ? ports : undefined;
}
