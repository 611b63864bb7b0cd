import { type Figure, type Finding, finding, type Judged } from '../../findings/index.ts';
import { type Mold, shaftRadius } from '../../mold/index.ts';
import { openingForce, type Plate, plateBow, plateStress } from '../../physics/index.ts';
import { lidMetal } from '../../tables/index.ts';
import { byPlan, closingFigure } from './can-figure.ts';

/** Yield strength over the greatest stress allowed in a lid. Our own choice. */
const lidReserve = 1.5;

/** A plate that closes the can, mm; `hole` is a diameter, 0 for none. */
interface LidPlate {
  readonly thickness: number;
  readonly hole: number;
}

export interface Lids {
  readonly material?: string;
  readonly plates: readonly LidPlate[];
  /** Diameter of the circle they are held on, at least that of the can. */
  readonly heldOn: number;
  /** Diameter of the sprue form where it stands out through the upper lid, mm; 0 where it does not. */
  readonly shaft: number;
  readonly yieldPa?: number;
  readonly cureC?: number;
}

const present = (...values: readonly (number | undefined)[]): number[] =>
  values.filter((one) => one !== undefined);

/**
 * The upper lid, with a hole where the sprue form stands out, and the lower one or the can's floor. They are held
 * where clamps and bolts pull: on the widest of their circles, for once the can opens it bears no longer at its wall.
 */
export function lidsOf({ disc, sprue, bench: { can, closing, cure } }: Mold): Lids {
  const { lid } = closing ?? {};
  const shaft = sprue && sprue.grip > 0 ? Math.max(0, 2 * shaftRadius(sprue, disc.upper)) : 0;
  const upper = present(lid?.thickness, can?.lid).map((thickness) => ({
    thickness,
    hole: lid?.hole ?? shaft,
  }));
  const lower = present(lid?.thickness, can?.floor).map((thickness) => ({ thickness, hole: 0 }));
  const circles = present(can?.diameter ?? 2 * disc.radius, closing?.clamps?.circle, closing?.bolts?.circle);
  return {
    ...(lid?.material !== undefined && { material: lid.material }),
    plates: [...upper, ...lower],
    heldOn: Math.max(...circles),
    shaft,
    ...(lid?.yieldPa !== undefined && { yieldPa: lid.yieldPa }),
    ...(cure?.temperatureC !== undefined && { cureC: cure.temperatureC }),
  };
}

const plateSource =
  "Roark's Formulas for Stress and Strain, table 11.2, round plate, outer edge simply supported, with its hole; even load on the face of the can, held on the circle of clamps or bolts";

/** The lids under a pressure (Pa) on the face of the can, its diameter in mm. */
export function judgeLids(lids: Lids, pressurePa: number, diameter: number): Judged {
  const { plates, material, cureC, shaft } = lids;
  const driven = shaft > 0 ? [spruesForce(pressurePa, shaft)] : [];
  if (plates.length === 0 || material === undefined) return { findings: [], figures: driven };
  const stop = (which: 'metal' | 'yield' | 'hole', name: string): Finding =>
    finding('closing.lid-unknown', { subject: 'closing', values: { which, material: name, cure: cureC } });
  const metal = lidMetal(material);
  if (!metal) return { findings: [stop('metal', material)], figures: driven };
  if (plates.some(({ hole }) => hole >= diameter))
    return { findings: [stop('hole', material)], figures: driven };
  const yieldPa = lids.yieldPa ?? tableYield(metal, cureC);
  const bent = plates.map(({ thickness, hole }): Plate & { modulusPa: number } => ({
    ...metal,
    radius: lids.heldOn / 2,
    pressed: diameter / 2,
    hole: hole / 2,
    thickness,
  }));
  const worst = bent.reduce((most, one) =>
    plateStress(pressurePa, one) > plateStress(pressurePa, most) ? one : most,
  );
  const stress = plateStress(pressurePa, worst);
  const estimated = metal.source.kind === 'memory';
  const figures = [
    closingFigure('closing.lid', Math.min(...plates.map(({ thickness }) => thickness)), byPlan),
    closingFigure('closing.lidHeldOn', lids.heldOn, 'the widest circle of clamps, bolts and can'),
    closingFigure('closing.lidStress', stress, plateSource, estimated),
    closingFigure(
      'closing.lidBow',
      Math.max(...bent.map((one) => plateBow(pressurePa, one))),
      plateSource,
      estimated,
    ),
    ...driven,
  ];
  if (yieldPa === undefined) return { findings: [stop('yield', metal.name)], figures };
  return { findings: bentPast(worst, stress, yieldPa), figures };
}

const spruesForce = (pressurePa: number, shaft: number): Figure =>
  closingFigure(
    'closing.sprueForce',
    openingForce(pressurePa, shaft),
    'pressure times the area of the shaft in the lid',
  );

function bentPast({ thickness, hole }: Plate, measured: number, yieldPa: number): Finding[] {
  const limit = yieldPa / lidReserve;
  if (measured <= limit) return [];
  const needed = thickness * Math.sqrt(measured / limit);
  const bored = hole > 0 && { hole: 2 * hole };
  const values = { measured, limit, thickness, yield: yieldPa, needed, ...bored };
  return [finding('closing.lid-stress', { subject: 'closing', values })];
}

/** The table's yield holds up to some temperature; without one in the plan it is not known whether it does. */
const tableYield = (
  { yieldPa, yieldToC }: { yieldPa: number; yieldToC: number },
  cureC: number | undefined,
): number | undefined => (cureC !== undefined && cureC <= yieldToC ? yieldPa : undefined);
