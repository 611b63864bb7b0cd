/** A mode of a slab: its root, and its share of an even temperature of 1 (see slab.ts). */
interface Mode {
  readonly zeta: number;
  readonly share: number;
}

/** How a slab is heated and cooled. Temperatures in C, times in s. */
export interface Heating {
  readonly modes: readonly Mode[];
  /** Diffusivity over the half thickness squared, 1/s: Fo of one second. */
  readonly perSecond: number;
  readonly startC: number;
  readonly surroundingsC: number;
  readonly heatedS: number;
  /** Time constant with which the surroundings fall back to `startC` afterwards; 0: at once. */
  readonly coolingConstantS: number;
}

/**
 * Temperature at x (0 middle, 1 face) after `time`, C. The surroundings step to `surroundingsC` at 0 and, from
 * `heatedS` on, fall back exponentially: each mode's linear equation is solved in closed form (Duhamel's theorem).
 */
export function slabTemperature(heating: Heating, time: number, x: number): number {
  const { startC, surroundingsC, heatedS } = heating;
  const rise = surroundingsC - startC;
  const since = time - heatedS;
  const around = since <= 0 ? rise : rise * surroundingsLeft(heating, since);
  let sum = around;
  for (const { zeta, share } of heating.modes) {
    const rate = zeta * zeta * heating.perSecond;
    const warming = -rise * Math.exp(-rate * Math.min(time, heatedS));
    const now = since <= 0 ? warming : cooled(heating, warming, rate, since);
    sum += share * now * Math.cos(zeta * x);
  }
  return startC + sum;
}

const surroundingsLeft = ({ coolingConstantS }: Heating, since: number): number =>
  coolingConstantS > 0 ? Math.exp(-since / coolingConstantS) : 0;

/** A mode's lead over the surroundings, `since` seconds after these began to fall. */
function cooled(heating: Heating, before: number, rate: number, since: number): number {
  const rise = heating.surroundingsC - heating.startC;
  const damped = Math.exp(-rate * since);
  const { coolingConstantS } = heating;
  if (coolingConstantS <= 0) return (before + rise) * damped;
  const fall = 1 / coolingConstantS;
  const away = rate - fall;
  // At equal rates the quotient tends to since e^(-rate since).
  const driven = Math.abs(away * since) < 1e-9 ? since * damped : (Math.exp(-fall * since) - damped) / away;
  return before * damped + rise * fall * driven;
}
