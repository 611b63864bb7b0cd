import { codes } from './entry.ts';

/** Variants of a plan, many at once. */
export const batchCodes = codes({
  'batch.bad-cell': {
    severity: 'stop',
    means: 'A cell of the table of variants, or a whole row, gives no plan that can be read.',
    values: { 'row?': 'count', 'column?': 'name', 'value?': 'name', fault: 'name' },
    says: { row: '{fault}.', cell: 'In row {row} the `{value}` of column {column} will not do: {fault}.' },
    remedy:
      'Mend the cell; the other rows are not touched by it. An empty cell leaves the value of the plan.',
    formula: 'the plan with this one cell set can be read; a row has as many cells as the head',
    source: 'RFC 4180 for the table, the schema of plans for each value',
  },
  'batch.too-large': {
    severity: 'stop',
    means: 'A variant takes more memory than the geometry kernel can have, also when it starts anew.',
    values: { fault: 'name' },
    says: '{fault}.',
    remedy: 'Take coarser masters, or fewer of them on one disc.',
    formula: 'memory of the kernel, at most 4 GiB',
    source: 'WebAssembly with 32-bit addresses',
  },
  'batch.nothing-asked-for': {
    severity: 'stop',
    means: 'A variant has none of the solids or drawings that were asked for by name.',
    values: { names: 'names' },
    says: 'No solid or drawing of this variant begins with {names}.',
    remedy: 'Leave the name out of --only, or build this variant by itself to see what it has.',
    formula: 'every name given with --only begins the name of a solid, a drawing or their kind',
    source: 'own rule, the same as for a single build',
  },
});
