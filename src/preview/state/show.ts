import { fixed, type Unit } from '../../findings/index.ts';
import { units, warmth } from './view.ts';

const mmPerInch = 25.4;

/** A length in the unit the person chose. */
export const length = (mm: number): string =>
  units.value === 'mm' ? `${fixed(mm, 2)} mm` : `${fixed(mm / mmPerInch, 3)} in`;

export const temperature = (celsius: number): string =>
  warmth.value === 'C' ? `${fixed(celsius, 0)} C` : `${fixed(celsius * 1.8 + 32, 0)} F`;

const scaled = (value: number, by: number, places: number, unit: string): string =>
  `${fixed(value / by, places)} ${unit}`;

/** A value in the units the person chose. */
export function quantity(value: number, unit: Unit): string {
  const metric = units.value === 'mm';
  switch (unit) {
    case 'mm':
      return length(value);
    case 'mm2':
      return metric ? scaled(value, 100, 2, 'cm2') : scaled(value, mmPerInch ** 2, 3, 'in2');
    case 'mm3':
      return metric ? scaled(value, 1000, 3, 'cm3') : scaled(value, mmPerInch ** 3, 4, 'in3');
    case 'C':
      return temperature(value);
    case 'g':
      return metric ? scaled(value, 1, 2, 'g') : scaled(value, 28.349523125, 3, 'oz');
    case 'Pa':
      return metric ? scaled(value, 1e6, 2, 'MPa') : scaled(value, 6894.757293168, 0, 'psi');
    case 'N':
      return metric ? scaled(value, 1000, 2, 'kN') : scaled(value, 4.4482216152605, 0, 'lbf');
    case 's':
      return scaled(value, 60, 1, 'min');
    case 'ratio':
      return scaled(value, 0.01, 1, '%');
    case 'count':
      return fixed(value, 0);
    default:
      return `${fixed(value, 2)} ${unit}`;
  }
}
