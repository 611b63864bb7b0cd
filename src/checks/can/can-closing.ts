import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { openingForce, plateBow, plateStress } from '../../physics/index.ts';
import { bolt, lidMetal } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { type Holding, holding } from './can-holding.ts';

/** Yield strength over the greatest stress allowed in a lid. Our own choice. */
const lidReserve = 1.5;

type Bench = Mold['bench'];

interface CanClosingInput extends Holding {
  readonly pressurePa?: number;
  /** Of the face that is pressed: the can's, or without a can the disc's. */
  readonly diameter: number;
  readonly bolts?: Omit<NonNullable<NonNullable<Bench['closing']>['bolts']>, 'circle'>;
  readonly lid: Lid;
}

interface Lid {
  readonly material?: string;
  /** The thinnest plate that closes the can. */
  readonly thickness?: number;
  readonly yieldPa?: number;
  readonly cureC?: number;
}

/**
 * What the molding pressure pushes the can open with, and whether clamps or press, bolts and lids stand it. Bolts
 * are not counted; they draw shut, and are shown with the share of their proof load they would see in the clamps' stead.
 */
export const canClosing: Check = check<CanClosingInput>({
  id: 'can-closing',
  title: 'Closing the can',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    if (!mold.bench.closing && mold.placements.length === 0) return [];
    return [{ subject: 'closing', about: [], input: inputOf(mold) }];
  },
  run: (input) => {
    const { pressurePa, diameter } = input;
    const missing = leftOut([
      ['closing.pressure', pressurePa],
      ['closing.clamps', input.clamps ?? input.press ?? input.bolts],
      ['closing.lid.thickness', input.lid.thickness],
      ['closing.lid.material', input.lid.material],
    ]);
    const note = missing.length > 0 ? [someNotChecked(missing)] : [];
    if (pressurePa === undefined) return { findings: [...note, ...bolts(input, undefined).findings] };
    const force = openingForce(pressurePa, diameter);
    const parts = [holding(input, force), bolts(input, force), lids(input.lid, pressurePa, diameter)];
    return {
      findings: [...note, ...parts.flatMap(({ findings }) => findings)],
      figures: [figure('closing.force', force, pressTimesArea), ...parts.flatMap(({ figures }) => figures)],
    };
  },
});

const someNotChecked = (missing: readonly string[]): Finding =>
  finding('closing.not-checked', { subject: 'closing', values: { missing } });

function inputOf({ disc, bench: { can, closing, cure } }: Mold): CanClosingInput {
  const plates = [closing?.lid?.thickness, can?.lid, can?.floor].filter((one) => one !== undefined);
  const { circle: _, ...bolts } = closing?.bolts ?? { size: '', count: 0 };
  return {
    ...(closing?.pressurePa !== undefined && { pressurePa: closing.pressurePa }),
    diameter: can?.diameter ?? 2 * disc.radius,
    ...(closing?.clamps && { clamps: closing.clamps }),
    ...(closing?.press && { press: closing.press }),
    ...(closing?.bolts && { bolts }),
    lid: {
      ...(closing?.lid?.material !== undefined && { material: closing.lid.material }),
      ...(plates.length > 0 && { thickness: Math.min(...plates) }),
      ...(closing?.lid?.yieldPa !== undefined && { yieldPa: closing.lid.yieldPa }),
      ...(cure?.temperatureC !== undefined && { cureC: cure.temperatureC }),
    },
  };
}

const pressTimesArea = 'molding pressure times the face of the can';

const byPlan = 'the plan, or its rule for this disc';

const figure = (name: FigureName, value: number, source: string, estimated = false): Figure =>
  makeFigure(name, { subject: 'closing', value, source, estimated });

function bolts({ bolts: given }: CanClosingInput, force: number | undefined): Judged {
  if (!given) return { findings: [], figures: [] };
  if (given.grade === undefined) return { findings: [someNotChecked(['closing.bolts.grade'])], figures: [] };
  const row = bolt(given.size, given.grade);
  if (!row) {
    const values = { size: given.size, grade: given.grade };
    return { findings: [finding('closing.bolt-unknown', { subject: 'closing', values })], figures: [] };
  }
  const proof = row.proofN;
  const figures = [
    figure('closing.bolts', given.count, byPlan),
    figure('closing.boltProof', proof, row.source.text),
  ];
  if (force !== undefined)
    figures.push(
      figure(
        'closing.boltShare',
        force / (given.count * proof),
        `${row.source.text}; share of all bolts' proof load if the clamps let go`,
      ),
    );
  if (given.tension === undefined || given.tension <= proof) return { findings: [], figures };
  const tight = finding('closing.bolt-tension', {
    subject: 'closing',
    values: { measured: given.tension, limit: proof },
  });
  return { findings: [tight], figures };
}

const plateSource = "Roark's Formulas for Stress and Strain, round plate, simply supported, even load";

function lids(lid: Lid, pressurePa: number, diameter: number): Judged {
  if (lid.thickness === undefined || lid.material === undefined) return { findings: [], figures: [] };
  const metal = lidMetal(lid.material);
  const unknown = (which: 'metal' | 'yield', material: string): Finding =>
    finding('closing.lid-unknown', { subject: 'closing', values: { which, material, cure: lid.cureC } });
  if (!metal) return { findings: [unknown('metal', lid.material)], figures: [] };
  const yieldPa = lid.yieldPa ?? tableYield(metal, lid.cureC);
  const plate = { ...metal, radius: diameter / 2, thickness: lid.thickness };
  const stress = plateStress(pressurePa, plate);
  const estimated = metal.source.kind === 'memory';
  const figures = [
    figure('closing.lid', lid.thickness, byPlan),
    figure('closing.lidStress', stress, plateSource, estimated),
    figure('closing.lidBow', plateBow(pressurePa, plate), plateSource, estimated),
  ];
  if (yieldPa === undefined) return { findings: [unknown('yield', metal.name)], figures };
  const allowed = yieldPa / lidReserve;
  if (stress <= allowed) return { findings: [], figures };
  const { thickness } = lid;
  const needed = thickness * Math.sqrt(stress / allowed);
  const values = { measured: stress, limit: allowed, thickness, yield: yieldPa, needed };
  return { findings: [finding('closing.lid-stress', { subject: 'closing', values })], figures };
}

/** The table's yield holds up to some temperature; without one in the plan it is not known whether it does. */
const tableYield = (
  { yieldPa, yieldToC }: { yieldPa: number; yieldToC: number },
  cureC: number | undefined,
): number | undefined => (cureC !== undefined && cureC <= yieldToC ? yieldPa : undefined);
