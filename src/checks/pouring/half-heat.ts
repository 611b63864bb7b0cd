import type { Mold } from '../../mold/index.ts';
import { lidMetal, rubberKind } from '../../tables/index.ts';
import { leftOut, ownMaterial } from '../from-mold/index.ts';

/** How the halves take heat. */
export interface HalfHeat {
  readonly conductivityWMK: number;
  readonly diffusivityM2S: number;
  readonly estimated: boolean;
}

interface Told {
  readonly half?: HalfHeat;
  readonly missing: readonly string[];
}

/** Of rubber by plan or table; of rigid halves by their own sheet or as the metal of lids. */
export const halfHeat = (mold: Mold): Told => (mold.process === 'rigid' ? rigidHeat(mold) : rubberHeat(mold));

function rubberHeat({ bench: { rubber } }: Mold): Told {
  const row = rubberKind(rubber?.compound ?? '');
  const conductivityWMK = rubber?.conductivityWMK ?? row?.conductivityWMK?.value;
  const diffusivityM2S = rubber?.diffusivityM2S ?? row?.diffusivityM2S?.value;
  const missing = leftOut([
    ['rubber.conductivity', conductivityWMK],
    ['rubber.diffusivity', diffusivityM2S],
  ]);
  if (conductivityWMK === undefined || diffusivityM2S === undefined) return { missing };
  const remembered =
    (rubber?.conductivityWMK === undefined && row?.conductivityWMK?.source.kind === 'memory') ||
    (rubber?.diffusivityM2S === undefined && row?.diffusivityM2S?.source.kind === 'memory');
  return { missing, half: { conductivityWMK, diffusivityM2S, estimated: remembered } };
}

function rigidHeat(mold: Mold): Told {
  const { fixture } = mold;
  if (fixture.assumed) return { missing: ['fixture.material'] };
  const own = ownMaterial(mold, fixture.material);
  const metal = own ? undefined : lidMetal(fixture.material);
  const conductivityWMK = own?.conductivityWMK ?? metal?.conductivityWMK.value;
  const heatJKgK = own?.heatJKgK ?? metal?.heatJKgK;
  const density = own?.densityKgM3 ?? metal?.densityKgM3;
  const place = `materials.${fixture.material}`;
  const missing = leftOut([
    [`${place}.conductivity`, conductivityWMK],
    [`${place}.heatCapacity`, heatJKgK],
    [`${place}.density`, density],
  ]);
  if (conductivityWMK === undefined || heatJKgK === undefined || density === undefined) return { missing };
  const half = {
    conductivityWMK,
    diffusivityM2S: conductivityWMK / (density * heatJKgK),
    // Density, heat and conductivity of the table's metals are from memory.
    estimated: metal !== undefined,
  };
  return { missing, half };
}
