import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { hoopStress, wallStress } from '../../physics/index.ts';
import { lidMetal } from '../../tables/index.ts';
import { leftOut } from '../from-mold/index.ts';

/** Yield strength over the stress allowed in the wall, as in lids. Our own choice. */
const wallReserve = 1.5;

interface WallInput {
  readonly pressurePa: number;
  readonly diameter?: number | undefined;
  readonly wall?: number | undefined;
  readonly material?: string | undefined;
  readonly cureC?: number | undefined;
}

const source =
  'Lame, thick tube under pressure from within (Timoshenko; Shigley 3-14); hot rubber presses on the wall as on the lids';

/** The wall of the can under the pressure it is closed with: rubber hands that on to all sides, as a liquid does. */
export const canWall: Check = check<WallInput>({
  id: 'can-wall',
  title: 'Wall of the can',
  follows: false,
  processes: ['rubber'],
  units: ({ bench: { can, closing, cure } }) => {
    const { pressurePa } = closing ?? {};
    if (!can || pressurePa === undefined) return [];
    const { diameter, wall, material } = can;
    const input = { pressurePa, diameter, wall, material, cureC: cure?.temperatureC };
    return [{ subject: 'can', about: [], input }];
  },
  run: ({ pressurePa, diameter, wall, material, cureC }) => {
    const missing = leftOut([
      ['can.wall', wall],
      ['can.material', material],
    ]);
    const findings: Finding[] =
      missing.length > 0 ? [finding('closing.not-checked', { subject: 'can', values: { missing } })] : [];
    if (diameter === undefined || wall === undefined) return { findings };
    const tube = { inner: diameter / 2, outer: diameter / 2 + wall };
    const figure = (name: FigureName, value: number): Figure =>
      makeFigure(name, { subject: 'can', value, source, estimated: false });
    const stress = wallStress(pressurePa, tube);
    const figures = [
      figure('closing.wallHoop', hoopStress(pressurePa, tube)),
      figure('closing.wallStress', stress),
    ];
    if (material === undefined) return { findings, figures };
    const yieldPa = yieldOf(material, cureC);
    if (yieldPa === undefined) {
      const values = { material, cure: cureC };
      return { findings: [finding('closing.wall-unknown', { subject: 'can', values })], figures };
    }
    const limit = yieldPa / wallReserve;
    if (stress <= limit) return { figures };
    const values = { measured: stress, limit, wall, yield: yieldPa };
    return { findings: [finding('closing.wall-stress', { subject: 'can', values })], figures };
  },
});

/** The table's yield holds up to some temperature; beyond it, or without one in the plan, nothing is known. */
function yieldOf(material: string, cureC: number | undefined): number | undefined {
  const metal = lidMetal(material);
  return metal && cureC !== undefined && cureC <= metal.yieldToC ? metal.yieldPa : undefined;
}
