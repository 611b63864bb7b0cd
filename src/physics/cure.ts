/** Molar gas constant, J/(mol K) (exact since the SI of 2019, rounded). */
const gasConstant = 8.314462618;
const kelvin = 273.15;

/** How a compound cures with temperature. */
export interface CureRate {
  readonly referenceC: number;
  readonly activationEnergyJMol: number;
}

/** Rate of cure at `celsius` over that at the reference: exp(-E/R (1/T - 1/T_ref)) (Arrhenius). */
export const cureRate = ({ referenceC, activationEnergyJMol }: CureRate, celsius: number): number =>
  Math.exp((-activationEnergyJMol / gasConstant) * (1 / (celsius + kelvin) - 1 / (referenceC + kelvin)));

/**
 * Equivalent time at the reference temperature, s, gathered along a temperature history sampled evenly every `step`
 * seconds: the running integral of the rate (trapezoids), one value a sample.
 */
export function equivalentTime(rate: CureRate, history: readonly number[], step: number): number[] {
  let sum = 0;
  let before = 0;
  return history.map((celsius, i) => {
    const now = cureRate(rate, celsius);
    if (i > 0) sum += ((before + now) / 2) * step;
    before = now;
    return sum;
  });
}
