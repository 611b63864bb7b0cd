import { type Matrix4, moveMesh, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { measureMesh } from '../mesh/index.ts';
import { type Cells, cellsOf, isTooFine, middleOf, mostCells } from './cells.ts';
import type { Conditions, Pocket, Port } from './conditions.ts';
import { emptyRoom } from './empty-room.ts';
import { type AirPlace, airLeft, assumptions, type Forecast, fillRoom, forecastRoom } from './forecast.ts';
import type { LockRule } from './lock.ts';
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
export type CavityForecast = Omit<Forecast, 'filling' | 'ranks' | 'places'> & {
  readonly places: readonly AirPlace[];
  /** Volume in cells where metal comes, over that of the mesh. */
  readonly seen: number;
};

/** A cavity in cells, to be filled through one set of gates and vents after another. */
export interface CavityRoom {
  /** Undefined where no gate opens into it. */
  forecast(channels: readonly SweptChannel[]): CavityForecast | undefined;
  /** Air that stays under one assumption alone, the usual one unless said; quicker. */
  air(channels: readonly SweptChannel[], lock?: LockRule): readonly Pocket[] | undefined;
  /** Middle of a cell of a pocket, mm. */
  middle(cell: number): Vec3;
}

export function cavityRoom(problem: Omit<CavityProblem, 'channels'>): CavityRoom {
  const { placed, cells } = cutCavity(problem);
  const { volume } = measureMesh(placed);
  const empty = emptyRoom(cells, problem.conditions);
  return {
    middle: (c) => middleOf(cells, c),
    forecast: (channels) => {
      const ports = portsOf(cells, channels);
      if (!ports) return undefined;
      const { filling: _, ranks: __, places, ...forecast } = forecastRoom(empty, ports);
      return {
        ...forecast,
        places: places.map(({ cells: ___, ...place }) => place),
        seen: forecast.reached / volume,
      };
    },
    air: (channels, lock = assumptions[0].lock) => {
      const ports = portsOf(cells, channels);
      return ports && airLeft(fillRoom(empty, ports), lock);
    },
  };
}

/** Where its cells would be too many, the least edge that fits is taken, and stands in the forecast. */
export function cutCavity({ mesh, matrix, cell }: Pick<CavityProblem, 'mesh' | 'matrix' | 'cell'>): {
  readonly placed: TriangleMesh;
  readonly cells: Cells;
} {
  const placed = moveMesh(mesh, matrix);
  const tried = cellsOf(placed, cell);
  const cells = isTooFine(tried) ? cellsOf(placed, tried.wouldFit) : tried;
  if (isTooFine(cells)) throw new RangeError(`${mostCells} cells do not fit at the edge said to fit`);
  return { placed, cells };
}

/** Fills one cavity. */
export const forecastCavity = (problem: CavityProblem): CavityForecast | undefined =>
  cavityRoom(problem).forecast(problem.channels);

/** Those that open into it, if one of them is a gate. */
export function portsOf(cells: Cells, channels: readonly SweptChannel[]): Port[] | undefined {
  const ports = channels.map((channel) => portOf(cells, channel)).filter((port) => port.cells.length > 0);
  return ports.some(({ kind }) => kind === 'gate') ? ports : undefined;
}
