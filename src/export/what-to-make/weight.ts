import type { Mold } from '../../mold/index.ts';
import { alloyNamed, halfMaterial, rubberKind } from '../../tables/index.ts';
import { showQuantity } from '../../wording/index.ts';

interface Density {
  readonly kgM3: number;
  readonly estimated: boolean;
}

/** By the tables, of rubber also by the plan; undefined where neither knows the material. */
function densityOf(material: string, { bench: { rubber } }: Mold): Density | undefined {
  if (material === 'rubber' && rubber?.densityKgM3 !== undefined)
    return { kgM3: rubber.densityKgM3, estimated: false };
  const kind = material === 'rubber' ? rubber?.compound : material;
  const found = halfMaterial(material) ?? alloyNamed(material) ?? rubberKind(kind ?? '');
  const cell = found?.densityKgM3;
  return cell && { kgM3: cell.value, estimated: cell.source.kind === 'memory' };
}

/** What so many mm3 of a material weigh, solid; a dash where its density is not known. */
export function weightText(
  { volume, estimated }: { readonly volume: number; readonly estimated: boolean },
  material: string,
  mold: Mold,
): string {
  const density = densityOf(material, mold);
  if (!density) return '-';
  const mark = estimated || density.estimated ? '~' : '';
  return `${mark}${showQuantity(volume * density.kgM3 * 1e-6, 'g', mold.units)}`;
}
