import { fromPlan, fromTable, type Known, type Mold } from '../../mold/index.ts';
import { rubberKind } from '../../tables/index.ts';
import { halfMaterialOf } from './materials.ts';

/** Density of the halves, kg/m3: of the rubber by plan or table, of rigid halves by the fixtures' material. */
export const halfDensity = (mold: Mold): Known | undefined => {
  const { process, fixture, bench } = mold;
  const { rubber } = bench;
  return process === 'rigid'
    ? fromTable(halfMaterialOf(mold, fixture.material)?.densityKgM3)
    : (fromPlan(rubber?.densityKgM3) ?? fromTable(rubberKind(rubber?.compound ?? '')?.densityKgM3));
};
