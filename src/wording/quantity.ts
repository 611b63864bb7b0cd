import type { Figure, Unit, UnitSystem } from '../findings/index.ts';
import { mmPerInch } from '../geometry/index.ts';

export const gramsPerOunce = 28.349523125;
export const gramsPerPound = 453.59237;
export const newtonsPerPound = 4.4482216152605;
/** Of a torque: one pound-force at one foot, N m. */
export const newtonMetersPerPoundFoot = (newtonsPerPound * 12 * mmPerInch) / 1000;
export const pascalsPerPsi = 6894.757293168;

/** `places` decimals; what rounds to nothing has no sign. */
export const fixed = (value: number, places: number): string => {
  const text = value.toFixed(places);
  return text === `-${(0).toFixed(places)}` ? text.slice(1) : text;
};

type Shown = readonly [metric: string, inch: string];

/** Decimals that a small length is shown with beyond the usual ones; what is nothing to a bench stays so. */
function moreDecimals(mm: number): number {
  const size = Math.abs(mm);
  return size < 5e-5 || size >= 0.1 ? 0 : size >= 0.01 ? 1 : 2;
}

function lengthShown(mm: number): Shown {
  const more = moreDecimals(mm);
  return [`${fixed(mm, 2 + more)} mm`, `${fixed(mm / mmPerInch, 3 + more)} in`];
}

const shrinking = (value: number, wide: number): string => {
  const size = Math.abs(value);
  return fixed(value, size < 10 ? wide : size < 100 ? wide - 1 : Math.max(0, wide - 2));
};

function both(value: number, unit: Unit): Shown | undefined {
  switch (unit) {
    case 'mm':
      return lengthShown(value);
    case 'mm2':
      return [
        Math.abs(value) < 100 ? `${shrinking(value, 2)} mm2` : `${fixed(value / 100, 2)} cm2`,
        `${fixed(value / mmPerInch ** 2, 3)} in2`,
      ];
    case 'mm3':
      return [cubic(value), `${fixed(value / mmPerInch ** 3, inchDecimals(Math.abs(value)))} in3`];
    case 'C':
      return [`${fixed(value, 0)} C`, `${fixed(value * 1.8 + 32, 0)} F`];
    case 'K':
      return [`${fixed(value, 0)} K`, `${fixed(value * 1.8, 0)} deg F`];
    case 'g':
      return [`${fixed(value, 2)} g`, `${fixed(value / gramsPerOunce, 3)} oz`];
    case 'kg':
      return [`${fixed(value, 3)} kg`, `${fixed((value * 1000) / gramsPerPound, 3)} lb`];
    case 'g.mm':
      return [`${fixed(value, 0)} g.mm`, `${fixed(value / gramsPerOunce / mmPerInch, 3)} oz.in`];
    case 'Pa':
      return [
        Math.abs(value) < 1e5 ? `${fixed(value / 1000, 1)} kPa` : `${fixed(value / 1e6, 2)} MPa`,
        `${fixed(value / pascalsPerPsi, Math.abs(value) < 1e5 ? 2 : 0)} psi`,
      ];
    case 'N':
      return Math.abs(value) < 1000
        ? [`${fixed(value, 1)} N`, `${fixed(value / newtonsPerPound, 1)} lbf`]
        : [`${fixed(value / 1000, 2)} kN`, `${fixed(value / newtonsPerPound, 0)} lbf`];
    case 'N.m':
      return [`${fixed(value, 1)} N m`, `${fixed(value / newtonMetersPerPoundFoot, 1)} lbf ft`];
    case 'm/s':
      return [`${fixed(value, 2)} m/s`, `${fixed((value * 1000) / mmPerInch / 12, 1)} ft/s`];
    default:
      return undefined;
  }
}

const cubic = (value: number): string => {
  const size = Math.abs(value);
  if (size < 1000) return `${shrinking(value, 2)} mm3`;
  return `${fixed(value / 1000, size < 1e6 ? 3 : 0)} cm3`;
};

/** Of cubic inches; a few cubic millimeters are told apart too, what shows as none of them is none. */
function inchDecimals(mm3: number): number {
  if (mm3 >= 1e6) return 1;
  return mm3 >= 10 || mm3 < 0.005 ? 4 : 6;
}

/** In thousands, as the SI counts them. */
function byteText(value: number): string {
  if (value < 1e4) return `${fixed(value, 0)} bytes`;
  return value < 1e6 ? `${fixed(value / 1e3, 0)} kB` : `${fixed(value / 1e6, 1)} MB`;
}

/** What both systems read alike. */
function alike(value: number, unit: Unit): string {
  switch (unit) {
    case 'deg':
      return `${fixed(value, Math.abs(value) < 10 ? 2 : 1)} deg`;
    case 's':
      return value > 0 && value < 60
        ? `${fixed(value, value < 10 ? 1 : 0)} s`
        : `${fixed(value / 60, 1)} min`;
    case 'ratio':
      return `${fixed(value * 100, 1)} %`;
    case 'times':
      return `${fixed(value, value < 100 ? 1 : 0)} times`;
    case 'count':
      return fixed(value, 0);
    // What it is counted in is the plan's own word.
    case 'money':
      return fixed(value, 2);
    case 'bytes':
      return byteText(value);
    default:
      return `${fixed(value, value < 100 ? 2 : 0)} ${unit}`;
  }
}

/** Decimals of a place or a size, where two systems beside each other would be too much. */
const spot = (mm: number, units: UnitSystem): string =>
  units === 'metric' ? fixed(mm, 1) : fixed(mm / mmPerInch, 2);

/** A place in the person's unit alone: `(12.0, -3.5, 0.0) mm`. */
export const placeText = (place: readonly number[], units: UnitSystem): string =>
  `(${place.map((value) => spot(value, units)).join(', ')}) ${units === 'metric' ? 'mm' : 'in'}`;

/** Lengths of a part's sides in the person's unit, as fine as one length alone: `31.75 x 12.70 x 6.35 mm`. */
export const showSides = (sides: readonly number[], units: UnitSystem): string => {
  const inch = units === 'inch';
  return `${sides.map((side) => (inch ? fixed(side / mmPerInch, 3) : fixed(side, 2))).join(' x ')} ${inch ? 'in' : 'mm'}`;
};

/** Lengths of a box's sides: `12.0 x 3.5 x 8.0 mm`, with those in the other system behind them where both are wanted. */
export function showBox(sides: readonly number[], units: UnitSystem, inBoth: boolean): string {
  const metric = `${showSize(sides, 'metric')} mm`;
  const inch = `${showSize(sides, 'inch')} in`;
  const [own, other] = units === 'metric' ? [metric, inch] : [inch, metric];
  return inBoth ? `${own} (${other})` : own;
}

/** Lengths of a box's sides in the person's unit, which stands elsewhere: `12.0 x 3.5 x 8.0`. */
export const showSize = (sides: readonly number[], units: UnitSystem): string =>
  sides.map((side) => spot(side, units)).join(' x ');

/** A value with its unit for people: the person's own system first, the other in brackets. */
export function showQuantity(value: number, unit: Unit, system: UnitSystem): string {
  const shown = both(value, unit);
  if (!shown) return alike(value, unit);
  const [metric, inch] = shown;
  return system === 'metric' ? `${metric} (${inch})` : `${inch} (${metric})`;
}

/** A figure for people: a wave before what is only estimated, money in the plan's own word. */
export function showFigure(
  { value, unit, estimated, word }: Pick<Figure, 'value' | 'unit' | 'estimated' | 'word'>,
  system: UnitSystem,
): string {
  const shown = `${estimated ? '~' : ''}${showQuantity(value, unit, system)}`;
  return word === undefined ? shown : `${shown} ${word}`;
}
