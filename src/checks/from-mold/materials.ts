import type { Mold, OwnMaterial } from '../../mold/index.ts';
import {
  computed,
  type HalfMaterial,
  type HeatRow,
  halfMaterial,
  heatRow,
  materialName,
  published,
  type Sourced,
} from '../../tables/index.ts';

/** The material the plan gives by its data sheet under this name, however it is spelled. */
export const ownMaterial = (
  { materials = [] }: Pick<Mold, 'materials'>,
  written: string,
): OwnMaterial | undefined => materials.find(({ name }) => materialName(name) === materialName(written));

const sheetOf = ({ source }: OwnMaterial) => published(`${source}, as the plan gives it`);

/** What heat a material stands: by the plan's own sheet, else by the table. */
export function heatOf(mold: Pick<Mold, 'materials'>, written: string): HeatRow | undefined {
  const own = ownMaterial(mold, written);
  if (!own) return heatRow(written);
  return {
    name: own.name,
    words: [],
    kind: own.kind === 'plaster' ? 'porous' : 'plastic',
    limitC: own.heatLimitC,
    ...(own.loadPa !== undefined && { loadPa: own.loadPa }),
    source: sheetOf(own),
  };
}

/** The greatest Poisson's ratio a body alike in all directions has, with which it is strained most while it turns. */
const greatestPoisson: Sourced = {
  value: 0.5,
  source: computed('greatest ratio of a body alike in all directions'),
};

/** Strength and density of a material: by the plan's own sheet, else by the table. */
export function halfMaterialOf(mold: Pick<Mold, 'materials'>, written: string): HalfMaterial | undefined {
  const own = ownMaterial(mold, written);
  const listed = halfMaterial(written);
  if (!own) return listed && { poisson: greatestPoisson, ...listed };
  const source = sheetOf(own);
  return {
    name: own.name,
    also: [],
    densityKgM3: { value: own.densityKgM3, source },
    strengthPa: { value: own.strengthPa, source },
    poisson: own.poisson === undefined ? greatestPoisson : { value: own.poisson, source },
  };
}
