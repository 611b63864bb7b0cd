import { type Mode, slabModes } from './slab.ts';

/** Halves that are poured into again and again: heat comes in where they meet and leaves through their outer faces. */
export interface Poured {
  /** Thickness of one half, m. */
  readonly thickness: number;
  readonly conductivityWMK: number;
  readonly diffusivityM2S: number;
  /** From the outer faces to the air, W/m2K. */
  readonly filmWM2K: number;
  readonly airC: number;
  /** Of the halves at the first pour. */
  readonly startC: number;
  /** What one pour gives to a square meter of one half, J. */
  readonly pulseJM2: number;
}

/** A mode, how fast it falls (1/s), and what one pour puts into it where the halves meet, K. */
interface Pulse extends Mode {
  readonly rate: number;
  readonly kelvin: number;
}

/** A heat pulse in the middle of a slab: q / (rho c L) over the norm of each mode (Carslaw and Jaeger, ch. 14). */
function pulses(poured: Poured): Pulse[] {
  const { thickness, conductivityWMK, diffusivityM2S, filmWM2K, pulseJM2 } = poured;
  const modes = slabModes({ biot: (filmWM2K * thickness) / conductivityWMK, lumped: 0 });
  const even = pulseJM2 / ((conductivityWMK / diffusivityM2S) * thickness);
  return modes.map(({ zeta, share }) => ({
    zeta,
    share,
    rate: (zeta ** 2 * diffusivityM2S) / thickness ** 2,
    kelvin: even / (0.5 + Math.sin(2 * zeta) / (4 * zeta)),
  }));
}

/** Temperature where the halves meet, C, just before each pour, the first of them number 0, pours `cycleS` apart. */
export function beforePours(poured: Poured, cycleS: number, count: number): number[] {
  const { airC, startC } = poured;
  const modes = pulses(poured);
  return Array.from({ length: count }, (_, k) =>
    modes.reduce((sum, { share, rate, kelvin }) => {
      const left = Math.exp(-rate * cycleS * k);
      const one = Math.exp(-rate * cycleS);
      // Geometric series over the pours so far.
      return sum + (startC - airC) * share * left + (k === 0 ? 0 : (kelvin * one * (1 - left)) / (1 - one));
    }, airC),
  );
}

/** The same after so many pours that it changes no more. */
export const whenEven = (poured: Poured, cycleS: number): number =>
  pulses(poured).reduce((sum, { rate, kelvin }) => {
    const one = Math.exp(-rate * cycleS);
    return sum + (kelvin * one) / (1 - one);
  }, poured.airC);
