import {
  alloys,
  bolts,
  capNuts,
  coolestCure,
  halfMaterials,
  heatRows,
  hexNuts,
  holdingReserve,
  insertPockets,
  lidMetals,
  makingProcesses,
  mediumTolerances,
  metals,
  nutBores,
  preloadShare,
  type RowSource,
  rigidUndercut,
  rubberBulkModulus,
  rubbers,
  solidSource,
  stockDiscs,
  stockThicknesses,
  threads,
  torqueFactors,
} from '../src/tables/index.ts';

/** One number of `src/tables`, and where it came from. */
export interface TableNumber {
  readonly table: string;
  readonly row: string;
  readonly what: string;
  /** Left out: a blank, for which a plan is stopped or told. */
  readonly value?: number;
  readonly source: RowSource;
}

const isSource = (value: unknown): value is RowSource =>
  typeof value === 'object' && value !== null && 'kind' in value && 'text' in value;

/** All numbers of a row: those with a source of their own, and those under the source of the row. */
function numbersOf(table: string, row: string, fields: object, above?: RowSource): TableNumber[] {
  const own = 'source' in fields && isSource(fields.source) ? fields.source : above;
  return Object.entries(fields).flatMap(([what, value]): TableNumber[] => {
    if (typeof value === 'number' && own) return [{ table, row, what, value, source: own }];
    if (typeof value !== 'object' || value === null || isSource(value) || Array.isArray(value)) return [];
    return numbersOf(table, row, value, own).map((one) => ({
      ...one,
      what: one.what === 'value' ? what : `${what}.${one.what}`,
    }));
  });
}

const named = (table: string, rows: readonly (object & { readonly name: string })[]): TableNumber[] =>
  rows.flatMap((row) => numbersOf(table, row.name, row));
const sized = (table: string, rows: readonly (object & { readonly size: string })[]): TableNumber[] =>
  rows.flatMap((row) => numbersOf(table, row.size, row));

const ourOwn: RowSource = { kind: 'choice', text: 'our own choice; no published source' };

/** Every number of `src/tables`. A share in a composition is its alloy's name, not a number looked up. */
export const tableNumbers: readonly TableNumber[] = [
  ...named('alloys', alloys),
  ...metals.flatMap(({ symbol, solidKgM3, liquidSource, ...liquid }) => [
    ...numbersOf('metals', symbol, { solidKgM3, source: solidSource }),
    ...numbersOf('metals', symbol, { ...liquid, source: liquidSource }),
  ]),
  ...bolts.flatMap(({ size, grade, proofN, source }) =>
    numbersOf('bolts', `${size} ${grade}`, { proofN, source }),
  ),
  ...sized('cap-nuts', capNuts),
  ...sized('hex-nuts', hexNuts),
  ...sized('nut-bores', nutBores),
  ...sized('insert-pockets', insertPockets),
  ...named('threads', threads),
  ...named('half-materials', halfMaterials),
  ...named('lid-metals', lidMetals),
  ...heatRows.flatMap(({ name, limitC, loadPa, source }): TableNumber[] => [
    { table: 'heat', row: name, what: 'limitC', ...(limitC !== undefined && { value: limitC }), source },
    ...numbersOf('heat', name, { ...(limitC !== undefined && loadPa !== undefined && { loadPa }), source }),
  ]),
  ...named('rubbers', rubbers),
  ...numbersOf('rubbers', 'any', { bulkModulusPa: rubberBulkModulus, coolestCureC: coolestCure }),
  ...named('making-processes', makingProcesses),
  ...named('stock', [...stockThicknesses, ...stockDiscs]),
  ...mediumTolerances.flatMap((row) => numbersOf('tolerances', `over ${row.over}`, row)),
  ...numbersOf('tightening', 'any', { torqueFactors, preloadShare }),
  ...numbersOf('reserves', 'any', { holdingReserve, rigidUndercut, source: ourOwn }),
];
