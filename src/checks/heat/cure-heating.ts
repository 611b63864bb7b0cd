import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { type Heating, type SlabFaces, slabModes } from '../../physics/index.ts';
import { type LidMetal, lidMetal, rubberKind } from '../../tables/index.ts';
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
  // The thickest lags the most.
  const plates = [closing?.lid?.thickness, can?.lid, can?.floor].filter((one) => one !== undefined);
  return {
    thickness,
    cure: cure ?? null,
    rubber: rubber ?? null,
    lid: {
      ...(closing?.lid?.material !== undefined && { material: closing.lid.material }),
      ...(plates.length > 0 && { thickness: Math.max(...plates) }),
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
  const exchange = oven ? cure?.filmWM2K : cure?.contactWM2K;
  const missing = leftOut([
    ['cure.temperature', cure?.temperatureC],
    ['cure.time', cure?.timeS],
    ['cure.heating', cure?.heating],
    ['cure.start', cure?.startC],
    ['rubber.diffusivity', diffusivity],
    ['rubber.conductivity', conductivity],
    [oven ? 'cure.film' : 'cure.contact', cure?.heating === undefined || exchange],
    ['closing.lid.thickness', lid.thickness],
    ['closing.lid.material', metal],
  ]);
  if (
    missing.length > 0 ||
    cure?.temperatureC === undefined ||
    cure.timeS === undefined ||
    cure.startC === undefined ||
    diffusivity === undefined ||
    conductivity === undefined ||
    exchange === undefined ||
    lid.thickness === undefined ||
    metal === undefined
  )
    return { missing };
  const half = thickness / 2000;
  const faces = facesUnder({ ...metal, thickness: lid.thickness / 1000 }, exchange, {
    half,
    diffusivity,
    conductivity,
  });
  const fromTable = rubber?.diffusivityM2S === undefined ? kind?.diffusivityM2S?.source.kind : undefined;
  const estimated = oven || fromTable === 'memory' || metal.source.kind === 'memory';
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

/**
 * What lies between the rubber and the platen or the oven's air: the film or contact, then a lid. The lid is of even
 * temperature, and all that resists within it is counted as before it, which heats the rubber a little less than truly.
 * Between lid and rubber nothing resists: they are pressed together. Lengths in m.
 */
function facesUnder(
  lid: Pick<LidMetal, 'densityKgM3' | 'heatJKgK' | 'conductivityWMK'> & { readonly thickness: number },
  exchangeWM2K: number,
  rubber: { readonly half: number; readonly diffusivity: number; readonly conductivity: number },
): SlabFaces {
  const { half, diffusivity, conductivity } = rubber;
  const resistance = 1 / exchangeWM2K + lid.thickness / lid.conductivityWMK.value;
  const capacity = lid.densityKgM3 * lid.heatJKgK * lid.thickness;
  return {
    biot: half / (conductivity * resistance),
    lumped: capacity / ((conductivity / diffusivity) * half),
  };
}
