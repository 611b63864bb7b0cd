// Sizes as they are engraved on fixtures or stand in the title of a solid. A fixture is the same whichever system its
// plan is written in: what a tool has to be set to is in mm.

/** A length in mm to a tenth, without its unit, as a gauge or a plate shows it: `6.0`. */
export const tenths = (millimeters: number): string => millimeters.toFixed(1);

/** A diameter to a tenth of a mm, no more decimals than it has: `230 mm`, `228.6 mm`. */
export const diameterText = (millimeters: number): string => `${Number(millimeters.toFixed(1))} mm`;

/** Of a whole number of inches along a scale: `3 IN`. */
export const inchesText = (inches: number): string => `${inches} IN`;

/** Of a build-up that is cut by its contours: how high it is and how far apart they are, mm. */
export const contoursText = (height: number, step: number): string =>
  `${tenths(height)} mm high, contours every ${step} mm`;

/** By how much a scale is over 1: `1.25 %`. */
export const percentOver = (scale: number): string => `${((scale - 1) * 100).toFixed(2)} %`;
