import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { heldModulus, modulusOfHardness, shapeFactor } from '../../physics/index.ts';
import { rubberBulkModulus } from '../../tables/index.ts';
import { pressedOf } from './pressed-area.ts';
import { type Cavity, shotInput } from './shot-input.ts';

/** Lengths in mm. */
interface SqueezeInput {
  readonly modulusPa: number;
  readonly closingForceN?: number | undefined;
  readonly cavities: readonly Cavity[];
  /** Of what is pressed: the disc, or a smaller plate. */
  readonly radius: number;
  readonly hole: number;
  readonly thickness: number;
  /** Least rubber over a cavity, and the greatest height of one. */
  readonly cover: number;
  readonly part: number;
  readonly wanted: number;
  readonly estimated: boolean;
}

const byBlock =
  'block of rubber between plates: E (1 + 2 S^2) where it cannot slide on them (Gent and Lindley, 1959), E where it slides freely; cavities and hole carry nothing';

/** How much the machine squeezes halves of rubber, and what that takes from cover and castings. */
export const squeeze: Check = check<SqueezeInput>({
  id: 'squeeze',
  title: 'Squeeze of the halves',
  follows: false,
  processes: ['rubber', 'poured'],
  units: (mold) => {
    const { modulusPa, hardness } = mold.bench.rubber ?? {};
    const modulus = modulusPa ?? (hardness === undefined ? undefined : modulusOfHardness(hardness));
    if (modulus === undefined || mold.placements.length === 0) return [];
    return [{ subject: 'machine', about: [], input: inputOf(mold, modulus, modulusPa === undefined) }];
  },
  run: (input, { memoize }) => {
    const { closingForceN: force, modulusPa, radius, hole, thickness, cover, part } = input;
    if (force === undefined) {
      const values = { missing: ['machine.closingForce'] };
      return { findings: [finding('squeeze.not-checked', { subject: 'machine', values })] };
    }
    const open = input.cavities.reduce((sum, one) => sum + pressedOf(one, memoize).pressed.area, 0);
    const area = Math.PI * (radius ** 2 - hole ** 2) - open;
    if (area <= 0) return {};
    const pressurePa = (force / area) * 1e6;
    const held = heldModulus(modulusPa, shapeFactor(radius, thickness), rubberBulkModulus.value);
    const [least, most] = [pressurePa / held, pressurePa / modulusPa];
    const figure = (name: FigureName, value: number): Figure =>
      makeFigure(name, { subject: 'machine', value, source: byBlock, estimated: input.estimated });
    return {
      figures: [
        figure('squeeze.least', least),
        figure('squeeze.most', most),
        figure('squeeze.mold', most * thickness),
        figure('squeeze.cover', coverLeft(cover, most)),
        figure('squeeze.part', most * part),
      ],
      findings: judge(input, most),
    };
  },
});

function inputOf(mold: Mold, modulusPa: number, byHardness: boolean): SqueezeInput {
  const { disc, placements, sprue, bench, limits } = mold;
  const plate = bench.machine?.plateDiameter;
  return {
    modulusPa,
    closingForceN: bench.machine?.closingForceN,
    cavities: shotInput(mold).cavities,
    radius: plate === undefined ? disc.radius : Math.min(disc.radius, plate / 2),
    hole: sprue?.wellRadius ?? 0,
    thickness: disc.lower + disc.upper,
    cover: Math.min(...placements.flatMap((one) => [disc.lower + one.lowest, disc.upper - one.highest])),
    part: Math.max(...placements.map(({ lowest, highest }) => highest - lowest)),
    wanted: limits.cover,
    // Hardness tells the modulus to a fifth or so, and how far the faces slide nobody knows.
    estimated: byHardness || placements.some(({ estimated }) => estimated),
  };
}

/** Rubber is squeezed alike everywhere; past all of it there is nothing. */
const coverLeft = (cover: number, most: number): number => cover * Math.max(0, 1 - most);

/** A cover that is thin as it lies has a finding of its own. */
function judge({ cover, wanted }: SqueezeInput, most: number): Finding[] {
  const measured = coverLeft(cover, most);
  if (cover < wanted || measured >= wanted) return [];
  const values = { measured, limit: wanted, before: cover, squeeze: most };
  return [finding('squeeze.cover', { subject: 'machine', values })];
}
