import type { TextPlace } from '../findings/index.ts';
import { type PlanPath, type PlanTree, sayPath } from './plan-tree.ts';

/** A number of the plan as the person wrote it. */
export interface NumberWritten {
  /** Its path within its section, such as `well.depth`. */
  readonly name: string;
  readonly at: TextPlace;
  /** The text, where it has no unit. */
  readonly bare?: string;
}

/** Digits and the signs of fractions, so no unit. */
const noUnit = /^[\d\s./+-]+$/;

/** Every number and text below a section, in the order of the text. */
export function numbersWritten(tree: PlanTree, section: string): NumberWritten[] {
  const below = (value: unknown, path: PlanPath): NumberWritten[] => {
    if (value !== null && typeof value === 'object')
      return Object.entries(value).flatMap(([key, held]) => below(held, [...path, key]));
    if (typeof value !== 'number' && typeof value !== 'string') return [];
    const text = String(value);
    const one = { name: sayPath(path.slice(1)), at: tree.keySpotAt(path) };
    return [noUnit.test(text) ? { ...one, bare: text } : one];
  };
  const root = tree.value as Readonly<Record<string, unknown>>;
  return below(root[section], [section]);
}
