import { finding, makeFigure } from '../../findings/index.ts';
import { type Check, check, soundSprue } from '../../mold/index.ts';
import { forceApart, ringPressed } from '../../physics/index.ts';
import { type ShotInput, shotInput } from './shot-input.ts';
import { closingReserve, leastShot, metalOf, mostShot, opening, shotOf, surfaceAt } from './turning-metal.ts';

interface FlashInput {
  readonly shot: ShotInput;
  readonly radius: number;
  readonly stiffnessNMm?: number | undefined;
}

const toRim =
  'liquid turning with its vessel, pressing on all of the parting plane from its free surface out to the rim: pi rho omega^2 (R^2 - r_s^2)^2 / 4';
const byStiffness = 'what the metal pushes beyond the closing force, over the stiffness of the closing';

/** What happens once metal is between the halves: it presses on ever more of them, at the worst out to the rim. */
export const flash: Check = check<FlashInput>({
  id: 'flash',
  title: 'Metal between the halves',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => {
    if (mold.placements.length === 0 || (mold.sprue && !soundSprue(mold))) return [];
    const input = {
      shot: shotInput(mold),
      radius: mold.disc.radius,
      stiffnessNMm: mold.bench.machine?.stiffnessNMm,
    };
    return [{ subject: 'spin', about: [], input }];
  },
  run: ({ shot: input, radius, stiffnessNMm }, { memoize }) => {
    const metal = metalOf(input, memoize);
    const shotG = metal && shotOf(metal);
    const { speedRpm, closingForceN: closing } = input;
    if (!metal || shotG === undefined || speedRpm === undefined) return {};
    if (shotG < leastShot(metal, speedRpm) || shotG > mostShot(metal, speedRpm)) return {};
    const surface = surfaceAt(metal, shotG, speedRpm);
    const ring = ringPressed(Math.sqrt(Math.max(0, surface)), radius);
    const measured = forceApart(ring, metal.densityKgM3, speedRpm, surface);
    const figure = (name: 'flash.force' | 'flash.gap', value: number, source: string) =>
      makeFigure(name, { subject: 'spin', value, source, estimated: metal.estimated });
    const force = figure('flash.force', measured, toRim);
    // A mold that opens without any flash has a stop of its own.
    const opens = closing === undefined || opening(metal, surface, speedRpm) * closingReserve > closing;
    if (opens) return { figures: [force] };
    const gap = stiffnessNMm === undefined ? undefined : Math.max(0, measured - closing) / stiffnessNMm;
    const gaps = gap === undefined ? [] : [figure('flash.gap', gap, byStiffness)];
    if (measured <= closing) return { figures: [force, ...gaps] };
    const values = { measured, limit: closing, gap };
    return {
      figures: [force, ...gaps],
      findings: [finding('shot.flash-spreads', { subject: 'spin', values })],
    };
  },
});
