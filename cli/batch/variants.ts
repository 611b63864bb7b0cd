import { type Axis, combine, readAxis, setInPlan } from '../../src/plan/index.ts';
import { Unreadable } from '../exit.ts';
import { nameVariants, type Unnamed } from './name-variants.ts';
import { readTable } from './read-table.ts';
import { mostVariants, type Variant } from './variant.ts';

export interface VaryOptions {
  /** Such as `disc.diameter=6in,9in`. */
  readonly vary?: readonly string[];
  /** The axes go along with each other instead of each with all. */
  readonly together?: true;
  /** A file with one row a variant, instead of `vary`. */
  readonly table?: string;
}

/** All variants of a batch, in order. Throws Unreadable where the plan has no such field or a list cannot be read. */
export async function readVariants(options: VaryOptions, planText: string): Promise<Variant[]> {
  const { vary = [], table } = options;
  if (vary.length > 0 && table !== undefined) throw new Unreadable('give --vary or --table, not both');
  if (vary.length === 0 && table === undefined) {
    throw new Unreadable('say what to vary: --vary disc.diameter=6in,9in,12in, or --table variants.csv');
  }
  const variants = table === undefined ? ofAxes(vary, options.together === true, planText) : [];
  if (table !== undefined) {
    const { paths, variants: rows } = await readTable(table);
    // What value stands in a cell is the row's own matter; that the plan has the field is the table's.
    for (const path of paths) mustSet(planText, path, '1', `${table}: column `);
    variants.push(...rows);
  }
  if (variants.length > mostVariants) throw new Unreadable(tooMany(variants.length));
  return nameVariants(variants);
}

function ofAxes(words: readonly string[], together: boolean, planText: string): Unnamed[] {
  const axes = words.map((word): Axis => {
    const axis = readAxis(word);
    if ('fault' in axis) throw new Unreadable(`--vary: ${axis.fault}`);
    return axis;
  });
  for (const { path, values } of axes) mustSet(planText, path, values[0], '--vary ');
  const count = together ? 0 : axes.reduce((product, { values }) => product * values.length, 1);
  if (count > mostVariants) throw new Unreadable(tooMany(count));
  const combined = combine(axes, together);
  if ('fault' in combined) throw new Unreadable(`--vary: ${combined.fault}`);
  return combined.rows.map((settings) => ({ settings }));
}

function mustSet(planText: string, path: string, value: string, where: string): void {
  const set = setInPlan(planText, [{ path, value }]);
  if ('fault' in set) throw new Unreadable(`${where}${set.fault}`);
}

const tooMany = (count: number): string =>
  `that gives ${count} variants; at most ${mostVariants} are made at once`;
