import type { UnitSystem } from '../../findings/index.ts';
import { mmPerInch, radPerDegree } from '../../geometry/index.ts';
import { fixed, showQuantity } from '../../wording/index.ts';

/** A length as `12.34 mm (0.486 in)`, or the other way round. */
export const both = (units: UnitSystem, mm: number): string => showQuantity(mm, 'mm', units);

/** A length in both units under each other, for narrow columns. */
export const stacked = (units: UnitSystem, mm: number): string => inOrder(units, mm).join('\n');

/** A length in the person's unit, then in the other. */
export function inOrder(units: UnitSystem, mm: number): [string, string] {
  const [metric, inch] = [`${fixed(mm, 2)} mm`, `${fixed(mm / mmPerInch, 3)} in`];
  return units === 'metric' ? [metric, inch] : [inch, metric];
}

/** A length beside others whose unit stands elsewhere. */
export const bare = (units: UnitSystem, mm: number): string =>
  units === 'metric' ? fixed(mm, 1) : fixed(mm / mmPerInch, 2);

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
  const positive = ((rad / radPerDegree) % 360) + 360;
  return fixed(Number((positive % 360).toFixed(1)) % 360, 1);
};
