import { type Memoize, metalWell, type Sprue, shaftRadius } from '../../mold/index.ts';
import { forceApart, ringPressed, surfaceHeight, surfaceRise, volumeUnder } from '../../physics/index.ts';
import { type PressedCavity, pressedOf } from './pressed-area.ts';
import type { ShotInput } from './shot-input.ts';

/** The machine holds this many times the force at least. Our own choice. */
export const closingReserve = 1.25;

/** A shot whose metal and well are known. */
export interface Metal extends ShotInput {
  readonly densityKgM3: number;
  readonly sprue: Sprue;
  readonly cavitiesPressed: readonly PressedCavity[];
}

/** The same at the speed of the plan. */
export interface Turning extends Metal {
  readonly speedRpm: number;
}

export function metalOf(input: ShotInput, memoize?: Memoize): Metal | undefined {
  const { densityKgM3, sprue } = input;
  if (densityKgM3 === undefined || !sprue) return undefined;
  const cavitiesPressed = input.cavities.map((cavity) => pressedOf(cavity, memoize));
  return { ...input, densityKgM3, sprue, cavitiesPressed };
}

/** Volume of cavities and gates, mm3. */
const mm3OfParts = ({ cavities, gates }: ShotInput): number =>
  [...cavities, ...gates].reduce((sum, { volume }) => sum + volume, 0);

/** Mass in g of all metal where its free surface stands `z0` high on the axis. */
function massUnder(metal: Metal, z0: number, rise: number): number {
  const { densityKgM3, sprue, upper } = metal;
  return (mm3OfParts(metal) + volumeUnder(metalWell(sprue, upper), z0, rise)) * densityKgM3 * 1e-6;
}

/** Shot in g that just fills all out to the edge of the well. */
export function leastShot(metal: Metal, speedRpm: number): number {
  const rise = surfaceRise(speedRpm);
  return massUnder(metal, -rise * metal.sprue.wellRadius ** 2, rise);
}

/** Shot in g that just does not climb out of the pouring hole. */
export function mostShot(metal: Metal, speedRpm: number): number {
  const rise = surfaceRise(speedRpm);
  const { sprue, upper } = metal;
  return massUnder(metal, upper - rise * shaftRadius(sprue, upper) ** 2, rise);
}

/** Mass of the shot in g: as the plan gives it, or by its share at the speed of the plan. */
export function shotOf(metal: Metal): number | undefined {
  const { shotKg, shotShare, speedRpm } = metal;
  if (shotShare === undefined) return shotKg === undefined ? undefined : shotKg * 1000;
  if (speedRpm === undefined) return undefined;
  const least = leastShot(metal, speedRpm);
  return least + shotShare * (mostShot(metal, speedRpm) - least);
}

/** Square of the free surface's radius in the parting plane, mm2; below 0 where metal covers the axis there. */
export function surfaceAt(metal: Metal, shotG: number, speedRpm: number): number {
  const rise = surfaceRise(speedRpm);
  const inWell = (shotG * 1e6) / metal.densityKgM3 - mm3OfParts(metal);
  return -surfaceHeight(metalWell(metal.sprue, metal.upper), inWell, rise) / rise;
}

/** Force (N) that opens the halves: on cavities, gates, and what metal covers of the upper half over the well and in its leaning hole. */
export function opening(metal: Metal, surface: number, speedRpm: number): number {
  const { sprue, upper, densityKgM3, cavitiesPressed, gates } = metal;
  const from = Math.max(Math.sqrt(Math.max(0, surface)), shaftRadius(sprue, upper));
  const ring = from < sprue.wellRadius ? [ringPressed(from, sprue.wellRadius)] : [];
  const areas = [
    ...cavitiesPressed.map(({ pressed }) => pressed),
    ...gates.map(({ pressed }) => pressed),
    ...ring,
  ];
  return areas.reduce((sum, area) => sum + Math.max(0, forceApart(area, densityKgM3, speedRpm, surface)), 0);
}

/**
 * V / A of the metal that stays in the well, mm, over the floor and wall it can give its heat to; what stands in the
 * hole is counted with it. Undefined where the shot is not known; 0 where it fills no more than cavities and gates.
 */
export function metalInWell(metal: Metal): number | undefined {
  const shot = shotOf(metal);
  if (shot === undefined) return undefined;
  const { wellRadius, wellDepth } = metal.sprue;
  const volume = Math.max(0, (shot * 1e6) / metal.densityKgM3 - mm3OfParts(metal));
  return volume / (Math.PI * wellRadius ** 2 + 2 * Math.PI * wellRadius * wellDepth);
}
