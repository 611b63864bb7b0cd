import type { Unit } from './finding.ts';

const mmPerInch = 25.4;
const gramsPerOunce = 28.349523125;

/** `places` decimals; what rounds to nothing has no sign. */
export const fixed = (value: number, places: number): string => {
  const text = value.toFixed(places);
  return text === `-${(0).toFixed(places)}` ? text.slice(1) : text;
};

const smallPlaces = (value: number): number => (value < 10 ? 2 : value < 100 ? 1 : 0);

/** A value with its unit for people: lengths also in inch, temperatures also in F, masses also in oz. */
export function showQuantity(value: number, unit: Unit): string {
  switch (unit) {
    case 'mm':
      return `${fixed(value, 2)} mm (${fixed(value / mmPerInch, 3)} in)`;
    case 'mm2':
      return `${fixed(value / 100, 2)} cm2 (${fixed(value / mmPerInch ** 2, 3)} in2)`;
    case 'mm3':
      if (value < 1000)
        return `${fixed(value, smallPlaces(value))} mm3 (${fixed(value / mmPerInch ** 3, 3)} in3)`;
      if (value < 1e6) return `${fixed(value / 1000, 3)} cm3 (${fixed(value / mmPerInch ** 3, 4)} in3)`;
      return `${fixed(value / 1000, 0)} cm3 (${fixed(value / mmPerInch ** 3, 1)} in3)`;
    case 'C':
      return `${fixed(value, 0)} C (${fixed(value * 1.8 + 32, 0)} F)`;
    case 'g':
      return `${fixed(value, 2)} g (${fixed(value / gramsPerOunce, 3)} oz)`;
    case 'deg':
      return `${fixed(value, 1)} deg`;
    case 'Pa':
      if (Math.abs(value) < 1e5)
        return `${fixed(value / 1000, 1)} kPa (${fixed(value / 6894.757293168, 2)} psi)`;
      return `${fixed(value / 1e6, 2)} MPa (${fixed(value / 6894.757293168, 0)} psi)`;
    case 'N':
      if (Math.abs(value) < 1000) return `${fixed(value, 1)} N (${fixed(value / 4.4482216152605, 1)} lbf)`;
      return `${fixed(value / 1000, 2)} kN (${fixed(value / 4.4482216152605, 0)} lbf)`;
    case 's':
      return `${fixed(value / 60, 1)} min`;
    case 'ratio':
      return `${fixed(value * 100, 1)} %`;
    case 'times':
      return `${fixed(value, value < 100 ? 1 : 0)} times`;
    case 'count':
      return fixed(value, 0);
    default:
      return `${fixed(value, value < 100 ? 2 : 0)} ${unit}`;
  }
}
