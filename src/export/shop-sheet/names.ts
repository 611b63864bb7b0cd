import { fixed } from '../../findings/index.ts';

const mmPerInch = 25.4;
const degree = Math.PI / 180;

/** A length as `12.34 mm (0.486 in)`. */
export const both = (mm: number, places = 2): string =>
  `${fixed(mm, places)} mm (${fixed(mm / mmPerInch, places + 1)} in)`;

/** A length in mm and, on the next line, in inch, for narrow columns. */
export const stacked = (mm: number): string => `${fixed(mm, 2)} mm\n${fixed(mm / mmPerInch, 3)} in`;

/** Names in their order, those that differ by a number that counts up as one: `leaf-1 to 3, shell`. */
export function runs(names: readonly string[]): string {
  const found: { first: string; stem: string; from: number; to: number }[] = [];
  for (const name of names) {
    const [, stem, digits] = name.match(/^(.*-)(\d+)$/) ?? ['', name, 'none'];
    const number = Number(digits);
    const last = found.at(-1);
    if (last && last.stem === stem && number === last.to + 1) last.to = number;
    else found.push({ first: name, stem, from: number, to: number });
  }
  return found.map(({ first, from, to }) => (to > from ? `${first} to ${to}` : first)).join(', ');
}

/** An angle from 0 up to 360 degrees. */
export const degrees = (rad: number): string => {
  const turned = ((rad / degree) % 360) + 360;
  return fixed(Number((turned % 360).toFixed(1)) % 360, 1);
};
