import { alloyNamed, liquidDensity, type RowSource } from '../tables/index.ts';
import type { Mold } from './mold.ts';

/** A value with where it is from; from memory makes what rests on it an estimate. */
export interface Known {
  readonly value: number;
  readonly estimated: boolean;
}

export const fromTable = (
  cell: { readonly value: number; readonly source: RowSource } | undefined,
): Known | undefined => cell && { value: cell.value, estimated: cell.source.kind === 'memory' };

export const fromPlan = (value: number | undefined): Known | undefined =>
  value === undefined ? undefined : { value, estimated: false };

/** What is poured colder is no molten metal but resin that sets, C; of casting alloys only a few with indium melt lower. */
export const coldestMetalC = 45;

/** Density of the solid metal, kg/m3: the plan's, else the table's for the alloy it names. */
export const alloyDensity = ({ bench: { alloy } }: Mold): Known | undefined =>
  fromPlan(alloy?.densityKgM3) ?? fromTable(alloyNamed(alloy?.name ?? '')?.densityKgM3);

/**
 * Density of the metal as it is poured, kg/m3: the plan's, else by the composition of the alloy it names, at the
 * temperature of pouring or, without one, where it is just molten. Resin is as dense as it sets, within what is known.
 */
export function liquidAlloyDensity(mold: Mold): Known | undefined {
  const { liquidKgM3, name = '', pourC, liquidusC } = mold.bench.alloy ?? {};
  if (liquidKgM3 !== undefined) return fromPlan(liquidKgM3);
  if (pourC !== undefined && pourC < coldestMetalC) return alloyDensity(mold);
  const row = alloyNamed(name);
  const celsius = pourC ?? liquidusC ?? row?.liquidusC?.value;
  if (!row?.composition || celsius === undefined) return undefined;
  return fromTable(liquidDensity(row.composition, celsius));
}

/** Surface tension of the molten metal, N/m, by the table. */
export const alloyTension = ({ bench: { alloy } }: Mold): Known | undefined =>
  fromTable(alloyNamed(alloy?.name ?? '')?.tensionNM);
