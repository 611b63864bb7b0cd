import { metalWell, type Sprue, shaftRadius } from '../../mold/index.ts';
import { forceApart, ringPressed, surfaceHeight, surfaceRise, turningPressure } from '../../physics/index.ts';
import type { PressedCavity } from './pressed-area.ts';
import type { ShotInput } from './shot-input.ts';

/** The machine holds this many times the force at least. Our own choice. */
export const closingReserve = 1.25;
const fastest = 10_000;
/** A shot whose metal, well and speed are known. */
export interface Turning extends ShotInput {
  readonly densityKgM3: number;
  readonly sprue: Sprue;
  readonly speedRpm: number;
  readonly cavitiesPressed: readonly PressedCavity[];
}

/** Volume of cavities and gates, mm3. */
export const mm3OfParts = ({ cavities, gates }: ShotInput): number =>
  [...cavities, ...gates].reduce((sum, { volume }) => sum + volume, 0);

/** Square of the free surface's radius in the parting plane, mm2; below 0 where metal covers the axis there. */
export function surfaceAt(turning: Turning, shotKg: number, speedRpm: number): number {
  const rise = surfaceRise(speedRpm);
  const inWell = (shotKg * 1e9) / turning.densityKgM3 - mm3OfParts(turning);
  return -surfaceHeight(metalWell(turning.sprue, turning.upper), inWell, rise) / rise;
}

/** Force (N) that opens the halves: on cavities, gates, and what metal covers of the upper half over the well and in its leaning hole. */
export function opening(turning: Turning, surface: number, speedRpm: number): number {
  const { sprue, upper, densityKgM3, cavitiesPressed, gates } = turning;
  const from = Math.max(Math.sqrt(Math.max(0, surface)), shaftRadius(sprue, upper));
  const ring = from < sprue.wellRadius ? [ringPressed(from, sprue.wellRadius)] : [];
  const areas = [
    ...cavitiesPressed.map(({ pressed }) => pressed),
    ...gates.map(({ pressed }) => pressed),
    ...ring,
  ];
  return areas.reduce((sum, area) => sum + Math.max(0, forceApart(area, densityKgM3, speedRpm, surface)), 0);
}

/** From the speed that presses metal into the detail wanted everywhere, to the one the machine holds shut. */
export function speedBand(
  turning: Turning,
  shotKg: number,
): { readonly least?: number; readonly most?: number } {
  const { detail, tensionNM, closingForceN, maxSpeedRpm, densityKgM3, cavitiesPressed } = turning;
  const nearest = Math.min(...cavitiesPressed.map(({ inner }) => inner));
  const fills = (speed: number): boolean =>
    turningPressure(densityKgM3, speed, nearest, surfaceAt(turning, shotKg, speed)) >=
    (2 * (tensionNM ?? 0) * 1000) / (detail ?? 1);
  const opens = (speed: number): boolean =>
    opening(turning, surfaceAt(turning, shotKg, speed), speed) * closingReserve > (closingForceN ?? 0);
  const least = detail === undefined || tensionNM === undefined ? undefined : firstSpeed(fills);
  const open = closingForceN === undefined ? undefined : firstSpeed(opens);
  const limits = [open, maxSpeedRpm].filter((one) => one !== undefined);
  return {
    ...(least !== undefined && { least }),
    ...(limits.length > 0 && { most: Math.min(...limits) }),
  };
}

/** The speed from which on something holds, to 0.5 rpm; undefined where it does not at the fastest. */
function firstSpeed(holds: (speedRpm: number) => boolean): number | undefined {
  let [low, high] = [1, fastest];
  if (!holds(high)) return undefined;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
