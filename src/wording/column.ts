import type { Unit, UnitSystem } from '../findings/index.ts';
import { mmPerInch } from '../geometry/index.ts';
import {
  fixed,
  gramsPerOunce,
  gramsPerPound,
  newtonMetersPerPoundFoot,
  newtonsPerPound,
  pascalsPerPsi,
} from './quantity.ts';

/** A unit a whole column of numbers is written in, whatever their size: its name, one of it in ours, decimals. */
type Column = readonly [name: string, size: number, places: number];

const columns: { readonly [U in Unit]?: { readonly metric: Column; readonly inch: Column } } = {
  mm: { metric: ['mm', 1, 2], inch: ['in', mmPerInch, 3] },
  mm2: { metric: ['mm2', 1, 1], inch: ['in2', mmPerInch ** 2, 3] },
  mm3: { metric: ['mm3', 1, 0], inch: ['in3', mmPerInch ** 3, 3] },
  g: { metric: ['g', 1, 2], inch: ['oz', gramsPerOunce, 3] },
  kg: { metric: ['kg', 1, 3], inch: ['lb', gramsPerPound / 1000, 3] },
  'g.mm': { metric: ['g.mm', 1, 0], inch: ['oz.in', gramsPerOunce * mmPerInch, 3] },
  Pa: { metric: ['kPa', 1000, 1], inch: ['psi', pascalsPerPsi, 2] },
  N: { metric: ['N', 1, 1], inch: ['lbf', newtonsPerPound, 1] },
  'N.m': { metric: ['N m', 1, 1], inch: ['lbf ft', newtonMetersPerPoundFoot, 1] },
  'm/s': { metric: ['m/s', 1, 2], inch: ['ft/s', (12 * mmPerInch) / 1000, 1] },
  s: { metric: ['min', 60, 1], inch: ['min', 60, 1] },
  ratio: { metric: ['%', 0.01, 1], inch: ['%', 0.01, 1] },
};

const columnOf = (unit: Unit, system: UnitSystem): Column => columns[unit]?.[system] ?? [unit, 1, 2];

/** Name of the unit of a column in the person's system. */
export const columnUnit = (unit: Unit, system: UnitSystem): string => columnOf(unit, system)[0];

/** A number for a column of that unit, rounded as far as a bench can tell; no unit behind it. */
export function columnNumber(value: number, unit: Unit, system: UnitSystem): string {
  const [, size, places] = columnOf(unit, system);
  return String(Number(fixed(value / size, places)));
}
