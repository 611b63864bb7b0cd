import type { Mold } from '../../mold/index.ts';
import { alloyNamed, type RowSource, rubberKind } from '../../tables/index.ts';
import { halfMaterialOf } from './materials.ts';

/** A value with where it is from; from memory makes what rests on it an estimate. */
export interface Known {
  readonly value: number;
  readonly estimated: boolean;
}

const fromTable = (
  cell: { readonly value: number; readonly source: RowSource } | undefined,
): Known | undefined => cell && { value: cell.value, estimated: cell.source.kind === 'memory' };

const fromPlan = (value: number | undefined): Known | undefined =>
  value === undefined ? undefined : { value, estimated: false };

/** Density of the metal, kg/m3: the plan's, else the table's for the alloy it names. */
export const alloyDensity = ({ bench: { alloy } }: Mold): Known | undefined =>
  fromPlan(alloy?.densityKgM3) ?? fromTable(alloyNamed(alloy?.name ?? '')?.densityKgM3);

/** Surface tension of the molten metal, N/m, by the table. */
export const alloyTension = ({ bench: { alloy } }: Mold): Known | undefined =>
  fromTable(alloyNamed(alloy?.name ?? '')?.tensionNM);

/** Density of the halves, kg/m3: of the rubber by plan or table, of rigid halves by the fixtures' material. */
export const halfDensity = (mold: Mold): Known | undefined => {
  const { process, fixture, bench } = mold;
  const { rubber } = bench;
  return process === 'rigid'
    ? fromTable(halfMaterialOf(mold, fixture.material)?.densityKgM3)
    : (fromPlan(rubber?.densityKgM3) ?? fromTable(rubberKind(rubber?.compound ?? '')?.densityKgM3));
};
