// Sizes as they are engraved on fixtures or stand in the title of a solid: in the system the plan is written in, since
// there is room for one. An inch has no nought before its point, as ASME Y14.5 writes it on drawings.
import type { UnitSystem } from '../findings/index.ts';
import { inchFraction, mmPerInch } from '../geometry/index.ts';

/** A depth without its unit, as a gauge or a plate shows it: to a tenth of a mm `6.0`, a thousandth of an inch `.236`. */
export const depthText = (mm: number, units: UnitSystem): string =>
  units === 'metric' ? mm.toFixed(1) : (mm / mmPerInch).toFixed(3).replace(/^0(?=\.)/, '');

/** A diameter to a tenth of a mm, a thousandth of an inch, no more decimals than it has: `230 mm`, `9 in`. */
export const diameterText = (mm: number, units: UnitSystem): string =>
  units === 'metric' ? `${Number(mm.toFixed(1))} mm` : `${Number((mm / mmPerInch).toFixed(3))} in`;

/** A size a person chose, without its unit where it is mm: `9.5`, `3/8 in`, `.407 in`. */
export function sizeText(mm: number, units: UnitSystem): string {
  if (units === 'metric') return String(Number(mm.toFixed(3)));
  const parts = (mm / mmPerInch) * 64;
  const fraction = parts >= 1 && Math.abs(parts - Math.round(parts)) < 1e-6;
  return `${fraction ? inchFraction(mm, 64) : depthText(mm, units)} in`;
}

/** Of a whole number of inches along a scale: `3 IN`. */
export const inchesText = (inches: number): string => `${inches} IN`;

/** Of one contour: its height as people measure it there, `2` mm or `1/16` in. */
export const contourText = (mm: number, units: UnitSystem): string =>
  units === 'metric' ? String(mm) : inchFraction(mm, 32);

/** Of a build-up that is cut by its contours: how high it is and how far apart they are, mm. */
export const contoursText = (height: number, step: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${depthText(height, units)} mm high, contours every ${step} mm`
    : `${depthText(height, units)} in high, contours every ${inchFraction(step, 32)} in`;

/** By how much a scale is over or under 1: `enlarged by 1.25 %`, `reduced by 50.00 %`. */
export const resized = (scale: number): string =>
  `${scale < 1 ? 'reduced' : 'enlarged'} by ${(Math.abs(scale - 1) * 100).toFixed(2)} %`;
