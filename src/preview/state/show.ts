import { fixed, type Series, type Unit } from '../../findings/index.ts';
import { units, warmth } from './view.ts';

const mmPerInch = 25.4;
const gramsPerOunce = 28.349523125;

/** A number as the person wants it: in what unit, and with how many decimals. */
export interface Shown {
  readonly value: number;
  readonly unit: string;
  readonly places: number;
}

const by = (value: number, part: number, unit: string, places: number): Shown => ({
  value: value / part,
  unit,
  places,
});

/** A value in the units the person chose. What few see in inches is shown in one unit alone. */
export function inUnits(value: number, unit: Unit): Shown {
  const metric = units.value === 'mm';
  switch (unit) {
    case 'mm':
      return metric ? by(value, 1, 'mm', 2) : by(value, mmPerInch, 'in', 3);
    case 'mm2':
      return metric ? by(value, 100, 'cm2', 2) : by(value, mmPerInch ** 2, 'in2', 3);
    case 'mm3':
      if (metric && Math.abs(value) < 1000) return by(value, 1, 'mm3', 1);
      return metric ? by(value, 1000, 'cm3', 3) : by(value, mmPerInch ** 3, 'in3', 4);
    case 'C':
      return warmth.value === 'C' ? by(value, 1, 'C', 0) : by(value * 1.8 + 32, 1, 'F', 0);
    case 'g':
      return metric ? by(value, 1, 'g', 2) : by(value, gramsPerOunce, 'oz', 3);
    case 'kg':
      return metric ? by(value, 1, 'kg', 2) : by(value, gramsPerOunce * 0.016, 'lb', 2);
    case 'g.mm':
      return metric ? by(value, 1, 'g.mm', 0) : by(value, gramsPerOunce * mmPerInch, 'oz.in', 3);
    case 'Pa':
      if (!metric) return by(value, 6894.757293168, 'psi', value < 1e5 ? 2 : 0);
      return Math.abs(value) < 1e6 ? by(value, 1000, 'kPa', 1) : by(value, 1e6, 'MPa', 2);
    case 'N':
      return metric ? by(value, 1000, 'kN', 2) : by(value, 4.4482216152605, 'lbf', 0);
    case 'm/s':
      return metric ? by(value, 1, 'm/s', 1) : by(value, mmPerInch * 0.012, 'ft/s', 1);
    case 's':
      return by(value, 60, 'min', 1);
    case 'deg':
      return by(value, 1, 'deg', 1);
    case 'ratio':
      return by(value, 0.01, '%', 1);
    case 'rpm':
    case 'count':
      return by(value, 1, unit === 'rpm' ? 'rpm' : '', 0);
    default:
      return by(value, 1, unit, 2);
  }
}

/** A value with its unit, as the person chose. */
export function quantity(value: number, unit: Unit): string {
  const shown = inUnits(value, unit);
  return `${fixed(shown.value, shown.places)} ${shown.unit}`.trim();
}

/** A length in the unit the person chose. */
export const length = (mm: number): string => quantity(mm, 'mm');

/** What is plotted along one axis. */
export interface ShownAxis {
  readonly label: string;
  readonly unit: string;
  readonly values: readonly number[];
}

/** A level line of a plot, and the words on it. */
export interface ShownLevel {
  readonly y: number;
  readonly says: string;
}

/** The points of a series in the units the person chose: one unit for each axis, that of its largest value. */
export function inTheirUnits({ x, y, limit }: Series): {
  readonly x: ShownAxis;
  readonly y: ShownAxis;
  readonly level?: ShownLevel;
} {
  const axis = ({ label, unit, values }: Series['x']) => {
    const largest = Math.max(...values.map(Math.abs), 0) || 1;
    const shown = inUnits(largest, unit);
    const zero = inUnits(0, unit).value;
    const each = (shown.value - zero) / largest;
    const at = (value: number): number => zero + value * each;
    return { label, unit: shown.unit, values: values.map(at), at };
  };
  const upright = axis(y);
  const level = limit && {
    y: upright.at(limit.value),
    says: `${quantity(limit.value, y.unit)} ${limit.says}`,
  };
  return { x: axis(x), y: upright, ...(level && { level }) };
}

/** A length beside an axis that says its unit elsewhere. */
export const tick = (mm: number): string =>
  units.value === 'mm' ? fixed(mm, 1) : `${fixed(mm / mmPerInch, 2)}"`;
