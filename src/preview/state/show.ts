import type { Cause, Finding, Series, Unit } from '../../findings/index.ts';
import { mmPerInch } from '../../geometry/index.ts';
import { type CauseSentences, fixed, type Sentences, sayCause, sayFinding } from '../../wording/index.ts';
import { systemNow, units, warmth } from './view.ts';

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

type Ways = Partial<Record<Unit, (value: number) => Shown>>;

const metric: Ways = {
  mm: (value) => by(value, 1, 'mm', 2),
  mm2: (value) => by(value, 100, 'cm2', 2),
  mm3: (value) => (Math.abs(value) < 1000 ? by(value, 1, 'mm3', 1) : by(value, 1000, 'cm3', 3)),
  g: (value) => by(value, 1, 'g', 2),
  kg: (value) => by(value, 1, 'kg', 2),
  'g.mm': (value) => by(value, 1, 'g.mm', 0),
  Pa: (value) => (Math.abs(value) < 1e6 ? by(value, 1000, 'kPa', 1) : by(value, 1e6, 'MPa', 2)),
  N: (value) => by(value, 1000, 'kN', 2),
  'm/s': (value) => by(value, 1, 'm/s', 1),
};

const inInches: Ways = {
  mm: (value) => by(value, mmPerInch, 'in', 3),
  mm2: (value) => by(value, mmPerInch ** 2, 'in2', 3),
  mm3: (value) => by(value, mmPerInch ** 3, 'in3', 4),
  g: (value) => by(value, gramsPerOunce, 'oz', 3),
  kg: (value) => by(value, gramsPerOunce * 0.016, 'lb', 2),
  'g.mm': (value) => by(value, gramsPerOunce * mmPerInch, 'oz.in', 3),
  Pa: (value) => by(value, 6894.757293168, 'psi', value < 1e5 ? 2 : 0),
  N: (value) => by(value, 4.4482216152605, 'lbf', 0),
  'm/s': (value) => by(value, mmPerInch * 0.012, 'ft/s', 1),
};

/** What few see in inches is shown in one unit alone. */
const either: Ways = {
  s: (value) => by(value, 60, 'min', 1),
  deg: (value) => by(value, 1, 'deg', 1),
  ratio: (value) => by(value, 0.01, '%', 1),
  rpm: (value) => by(value, 1, 'rpm', 0),
  count: (value) => by(value, 1, '', 0),
};

/** A value in the units the person chose. */
export function inUnits(value: number, unit: Unit): Shown {
  if (unit === 'C') return warmth.value === 'C' ? by(value, 1, 'C', 0) : by(value * 1.8 + 32, 1, 'F', 0);
  const way = (units.value === 'mm' ? metric : inInches)[unit] ?? either[unit];
  return way ? way(value) : by(value, 1, unit, 2);
}

/** A value with its unit, as the person chose. */
export function quantity(value: number, unit: Unit): string {
  const shown = inUnits(value, unit);
  return `${fixed(shown.value, shown.places)} ${shown.unit}`.trim();
}

/** A finding's sentences, as the person chose. */
export const said = (one: Finding): Sentences => sayFinding(one, systemNow());

/** All findings of one cause in one, as the person chose. */
export const saidOfAll = (cause: Cause): CauseSentences => sayCause(cause, systemNow());

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
