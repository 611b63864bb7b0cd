import { published, type RowSource } from './source.ts';

/** Proof load of a bolt of coarse thread: what it carries without taking a set, N. */
export interface BoltRow {
  /** Trade size: `M10`, or inches as a fraction, `3/8`. */
  readonly size: string;
  /** Strength class (`8.8`) or SAE grade (`grade 5`). */
  readonly grade: string;
  readonly proofN: number;
  readonly source: RowSource;
}

const newtonsPerPound = 4.4482216152605;

const iso = published("proof loads of coarse threads, ISO 898-1, read off a supplier's table");
const isoClasses = ['4.6', '5.8', '8.8'];
/** Size, pitch, N for each class. The table does not round as area times stress does: the table counts. */
const isoRows: readonly (readonly [string, string, readonly number[]])[] = [
  ['M6', '1', [4520, 7640, 11_600]],
  ['M8', '1.25', [8240, 13_900, 21_200]],
  ['M10', '1.5', [13_000, 22_000, 33_700]],
  ['M12', '1.75', [19_000, 32_000, 48_900]],
  ['M16', '2', [35_300, 59_700, 91_000]],
];

const sae = published('proof stress by SAE J429 times the stress area of the coarse thread (ASME B1.1)');
/** Proof stress, psi. */
const saeGrades: readonly (readonly [string, number])[] = [
  ['grade 2', 55_000],
  ['grade 5', 85_000],
  ['grade 8', 120_000],
];
/** Size, threads an inch, stress area in2. */
const saeRows: readonly (readonly [string, string, number])[] = [
  ['1/4', '20', 0.0318],
  ['5/16', '18', 0.0524],
  ['3/8', '16', 0.0775],
  ['1/2', '13', 0.1419],
];

export const bolts: readonly BoltRow[] = [
  ...isoRows.flatMap(([size, , loads]) =>
    loads.map((proofN, i) => ({ size, grade: isoClasses[i], proofN, source: iso })),
  ),
  ...saeRows.flatMap(([size, , area]) =>
    saeGrades.map(([grade, psi]) => ({ size, grade, proofN: area * psi * newtonsPerPound, source: sae })),
  ),
];

/** A coarse pitch may be written (`M10x1.5`, `3/8-16`) and is left away; a fine one stays and so finds no row. */
function plainSize(written: string): string {
  const plain = written
    .trim()
    .replace(/\s*(in\.?|inch|")$/i, '')
    .replace(/\s*unc$/i, '')
    .replace(/\s*x\s*/i, '-')
    .toUpperCase();
  const pitched = [...isoRows, ...saeRows].find(([size, pitch]) => plain === `${size}-${pitch}`);
  return pitched ? pitched[0] : plain;
}

const plainGrade = (written: string): string =>
  written
    .trim()
    .toLowerCase()
    .replace(/^(class|sae|j429)\s*/, '')
    .replace(/^(grade|gr\.?)?\s*([258])$/, 'grade $2');

/** The row for a size and grade as people write them; undefined where the table has none. */
export function bolt(size: string, grade: string): BoltRow | undefined {
  const [wantedSize, wantedGrade] = [plainSize(size), plainGrade(grade)];
  return bolts.find((row) => row.size === wantedSize && row.grade === wantedGrade);
}
