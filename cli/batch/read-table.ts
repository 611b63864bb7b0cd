import { CsvError, parse } from 'csv-parse/sync';
import { mostTextBytes } from '../../src/preview/server/regular-file.ts';
import { Unreadable } from '../exit.ts';
import { readNamed } from '../plan-files.ts';
import type { Unnamed } from './name-variants.ts';

/** The table of variants: its columns are paths in the plan, one row a variant. */
export interface VariantTable {
  readonly paths: readonly string[];
  readonly variants: readonly Unnamed[];
}

/** The column that names the variants; no field of a plan at the top has this name. */
const nameColumn = 'name';

/**
 * Reads a CSV file (RFC 4180, UTF-8) whose head names fields of the plan by path, and if wanted a column `name`. An
 * empty cell sets nothing. A row with too many or too few cells becomes a variant with a fault; throws Unreadable
 * where the file or its head cannot be read.
 */
export async function readTable(path: string): Promise<VariantTable> {
  const read = await readNamed(path, mostTextBytes);
  if ('fault' in read) throw new Unreadable(read.fault);
  const [head, ...rows] = cellsOf(read.bytes, path);
  if (!head || head.every((cell) => cell === '')) throw new Unreadable(`${path} has no head row`);
  const [only] = head;
  const parted = head.length === 1 && separators.find(({ mark }) => only.includes(mark));
  if (parted)
    throw new Unreadable(`${path}: ${parted.says}; save it with commas between, and points in numbers`);
  const empty = head.indexOf('');
  if (empty >= 0) throw new Unreadable(`${path}: column ${empty + 1} has no name in the head row`);
  const twice = head.find((name, i) => head.indexOf(name) !== i);
  if (twice !== undefined) throw new Unreadable(`${path} has two columns ${twice}`);
  const variants = rows.flatMap((cells, i) =>
    cells.every((cell) => cell === '') ? [] : [variantOf(head, cells, i + 2)],
  );
  if (variants.length === 0) throw new Unreadable(`${path} has no row under its head`);
  return { paths: head.filter((name) => name !== nameColumn), variants };
}

function cellsOf(bytes: Uint8Array, path: string): string[][] {
  try {
    return parse(Buffer.from(bytes), { bom: true, trim: true, relax_column_count: true });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new Unreadable(`${path} is no table of comma-separated values: ${sayQuote(error)}`);
  }
}

const separators = [
  { mark: ';', says: 'its columns are parted by semicolons, not by commas' },
  { mark: '\t', says: 'its columns are parted by tabs, not by commas' },
];

/** A quote mark within a cell is mostly one that stands for inches. */
function sayQuote({ code, message, ...rest }: CsvError): string {
  if (!quoteFaults.includes(code)) return message;
  const { lines } = rest as { readonly lines?: number };
  const where = lines === undefined ? '' : `line ${lines}: `;
  return `${where}a quote mark stands alone; write inches as 9 in, or the whole cell as "9"""`;
}

const quoteFaults: readonly string[] = [
  'INVALID_OPENING_QUOTE',
  'CSV_INVALID_CLOSING_QUOTE',
  'CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE',
  'CSV_QUOTE_NOT_CLOSED',
];

function variantOf(head: readonly string[], cells: readonly string[], row: number): Unnamed {
  const name = cells[head.indexOf(nameColumn)];
  const named = name === undefined || name === '' ? {} : { name };
  if (cells.length !== head.length) {
    const fault = `row ${row} has ${cells.length} cells, the head has ${head.length}`;
    return { row, settings: [], fault, ...named };
  }
  const settings = head.flatMap((path, i) =>
    path === nameColumn || cells[i] === '' ? [] : [{ path, value: cells[i] }],
  );
  return { row, settings, ...named };
}
