import { alloyDensity, type Mold } from '../../mold/index.ts';
import type { Freezing } from '../../physics/index.ts';
import { alloyNamed } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';

/** The metal as it sets, by plan or table; or what the plan leaves out for that. */
export function metalHeat(mold: Mold): { readonly metal?: Freezing; readonly missing: readonly string[] } {
  const { alloy } = mold.bench;
  const row = alloyNamed(alloy?.name ?? '');
  const density = alloyDensity(mold)?.value;
  const solidusC = alloy?.solidusC ?? row?.solidusC?.value;
  const liquidusC = alloy?.liquidusC ?? row?.liquidusC?.value;
  const { latentHeatJKg, heatMoltenJKgK, heatSolidJKgK, conductivityWMK, pourC } = alloy ?? {};
  const missing = leftOut([
    ['alloy.density', density],
    ['alloy.pour', pourC],
    ['alloy.solidus', solidusC],
    ['alloy.liquidus', liquidusC],
    ['alloy.latentHeat', latentHeatJKg],
    ['alloy.heatMolten', heatMoltenJKgK],
    ['alloy.heatSolid', heatSolidJKgK],
    ['alloy.conductivity', conductivityWMK],
  ]);
  if (
    density === undefined ||
    pourC === undefined ||
    solidusC === undefined ||
    liquidusC === undefined ||
    latentHeatJKg === undefined ||
    heatMoltenJKgK === undefined ||
    heatSolidJKgK === undefined ||
    conductivityWMK === undefined
  )
    return { missing };
  const metal = {
    densityKgM3: density,
    latentJKg: latentHeatJKg,
    moltenJKgK: heatMoltenJKgK,
    solidJKgK: heatSolidJKgK,
    conductivityWMK,
    solidusC,
    liquidusC,
    pourC,
  };
  return { metal, missing };
}
