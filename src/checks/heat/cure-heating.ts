import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { fixedFaces, type Heating, type SlabFaces, slabModes } from '../../physics/index.ts';
import { lidMetal, rubberKind } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';

type Bench = Mold['bench'];

/** What the cure is found from, as the plan gives it. */
export interface CureInput {
  /** Both halves together, mm. */
  readonly thickness: number;
  readonly cure: NonNullable<Bench['cure']> | null;
  readonly rubber: NonNullable<Bench['rubber']> | null;
  readonly lid: { readonly material?: string; readonly thickness?: number };
}

export function cureInput(thickness: number, { cure, rubber, closing, can }: Bench): CureInput {
  const lid = closing?.lid?.thickness ?? can?.lid;
  return {
    thickness,
    cure: cure ?? null,
    rubber: rubber ?? null,
    lid: {
      ...(closing?.lid?.material !== undefined && { material: closing.lid.material }),
      ...(lid !== undefined && { thickness: lid }),
    },
  };
}

interface Known {
  readonly heating: Heating;
  readonly estimated: boolean;
  figure(name: FigureName, value: number, source: string): Figure;
}

/** How the stack is heated, or what the plan leaves out for that. */
export function heatOf({ thickness, cure, rubber, lid }: CureInput): Known | { missing: string[] } {
  const kind = rubber?.compound === undefined ? undefined : rubberKind(rubber.compound);
  const diffusivity = rubber?.diffusivityM2S ?? kind?.diffusivityM2S?.value;
  const conductivity = rubber?.conductivityWMK ?? kind?.conductivityWMK?.value;
  const metal = lid.material === undefined ? undefined : lidMetal(lid.material);
  const oven = cure?.heating === 'oven';
  const missing = leftOut([
    ['cure.temperature', cure?.temperatureC],
    ['cure.time', cure?.timeS],
    ['cure.heating', cure?.heating],
    ['cure.start', cure?.startC],
    ['rubber.diffusivity', diffusivity],
    ['rubber.conductivity', oven ? conductivity : 0],
    ['cure.film', oven ? cure?.filmWM2K : 0],
    ['closing.lid.thickness', oven ? lid.thickness : 0],
    ['closing.lid.material', oven ? metal : 0],
  ]);
  if (
    missing.length > 0 ||
    cure?.temperatureC === undefined ||
    cure.timeS === undefined ||
    cure.startC === undefined ||
    diffusivity === undefined
  )
    return { missing };
  const half = thickness / 2000;
  const faces =
    oven && conductivity && metal && lid.thickness && cure.filmWM2K
      ? ovenFaces(
          half,
          { diffusivity, conductivity, film: cure.filmWM2K },
          { ...metal, thickness: lid.thickness },
        )
      : fixedFaces;
  const fromTable = rubber?.diffusivityM2S === undefined ? kind?.diffusivityM2S?.source.kind : undefined;
  const estimated = oven || fromTable === 'memory';
  return {
    heating: {
      modes: slabModes(faces),
      perSecond: diffusivity / half ** 2,
      startC: cure.startC,
      surroundingsC: cure.temperatureC,
      heatedS: cure.timeS,
      // Only in the can does it go on curing; where that is not said, nothing is counted.
      coolingConstantS: cure.cooling === 'in the can' ? (cure.coolingConstantS ?? 0) : 0,
    },
    estimated,
    figure: (name, value, from) => makeFigure(name, { subject: 'cure', value, source: from, estimated }),
  };
}

/** Biot number of the film, and the heat capacity of one lid over that of half the stack. Lengths in m but the lid's. */
function ovenFaces(
  half: number,
  { diffusivity, conductivity, film }: { diffusivity: number; conductivity: number; film: number },
  lid: { densityKgM3: number; heatJKgK: number; thickness: number },
): SlabFaces {
  const lidCapacity = (lid.densityKgM3 * lid.heatJKgK * lid.thickness) / 1000;
  return {
    biot: (film * half) / conductivity,
    lumped: lidCapacity / ((conductivity / diffusivity) * half),
  };
}
