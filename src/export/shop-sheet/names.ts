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

/** An angle from 0 up to 360 degrees. */
export const degrees = (rad: number): string => {
  const positive = ((rad / radPerDegree) % 360) + 360;
  return fixed(Number((positive % 360).toFixed(1)) % 360, 1);
};
