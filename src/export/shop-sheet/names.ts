import { fixed } from '../../findings/index.ts';

const mmPerInch = 25.4;
const degree = Math.PI / 180;

/** A length as `12.34 mm (0.486 in)`. */
export const both = (mm: number, places = 2): string =>
  `${fixed(mm, places)} mm (${fixed(mm / mmPerInch, places + 1)} in)`;

/** A length in mm and, on the next line, in inch, for narrow columns. */
export const stacked = (mm: number): string => `${fixed(mm, 2)} mm\n${fixed(mm / mmPerInch, 3)} in`;

/** An angle from 0 up to 360 degrees. */
export const degrees = (rad: number): string => {
  const turned = ((rad / degree) % 360) + 360;
  return fixed(Number((turned % 360).toFixed(1)) % 360, 1);
};
