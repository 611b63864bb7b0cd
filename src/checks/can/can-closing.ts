import { type Finding, finding } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { openingForce } from '../../physics/index.ts';
import { threadDiameter } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { type Bolts, judgeBolts } from './can-bolts.ts';
import { closingFigure } from './can-figure.ts';
import { clampsHold, type Holding, holding } from './can-holding.ts';
import { judgeLids, type Lids, lidsOf } from './can-lids.ts';

interface CanClosingInput extends Holding {
  readonly pressurePa?: number;
  /** Of the face that is pressed: the can's, or without a can the disc's. */
  readonly diameter: number;
  readonly bolts?: Bolts;
  readonly lids: Lids;
  /** Whether the plan says on what circle the lids are held. */
  readonly circleKnown: boolean;
}

/**
 * What the molding pressure pushes the can open with, and whether clamps or press, bolts and lids stand it. Bolts
 * are not counted; they draw shut, and are held to the load that may come to them.
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
    const underClamps = clampsHold(input);
    const note = blanks(input, underClamps);
    const force = pressurePa === undefined ? undefined : openingForce(pressurePa, diameter);
    const bolts = judgeBolts(input.bolts, { force, underClamps });
    if (pressurePa === undefined || force === undefined) return { findings: [...note, ...bolts.findings] };
    const parts = [holding(input, force), bolts, judgeLids(input.lids, pressurePa, diameter)];
    return {
      findings: [...note, ...parts.flatMap(({ findings }) => findings)],
      figures: [
        closingFigure('closing.force', force, 'molding pressure times the face of the can'),
        ...parts.flatMap(({ figures }) => figures),
      ],
    };
  },
});

function blanks(input: CanClosingInput, underClamps: boolean): Finding[] {
  const screw = input.clamps?.screw;
  const missing = leftOut([
    ['closing.pressure', input.pressurePa],
    ['closing.clamps', input.clamps ?? input.press ?? input.bolts],
    ['closing.clamps.circle', underClamps && !input.circleKnown ? undefined : true],
    ['closing.clamps.screw', underClamps ? screw && threadDiameter(screw) : true],
    ['closing.lid.thickness', input.lids.plates.length > 0 || undefined],
    ['closing.lid.material', input.lids.material],
  ]);
  if (missing.length === 0) return [];
  return [finding('closing.not-checked', { subject: 'closing', values: { missing } })];
}

function inputOf(mold: Mold): CanClosingInput {
  const { can, closing } = mold.bench;
  const { circle: _, ...bolts } = closing?.bolts ?? { size: '', count: 0 };
  return {
    ...(closing?.pressurePa !== undefined && { pressurePa: closing.pressurePa }),
    diameter: can?.diameter ?? 2 * mold.disc.radius,
    ...(closing?.clamps && { clamps: closing.clamps }),
    ...(closing?.press && { press: closing.press }),
    ...(closing?.bolts && { bolts }),
    lids: lidsOf(mold),
    circleKnown: (closing?.clamps?.circle ?? closing?.bolts?.circle) !== undefined,
  };
}
