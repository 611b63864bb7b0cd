import { ourChoice, published, type RowSource } from './source.ts';

/** General tolerance of a machined length: a size over `over` and up to `to` mm may be off by `plusMinus` mm. */
interface GeneralTolerance {
  readonly over: number;
  readonly to: number;
  readonly plusMinus: number;
  readonly source: RowSource;
}

const source = published("ISO 2768-1:1989, class m, linear sizes, read off suppliers' tables");

/** Class m (medium), what a shop keeps to without being asked for more. */
export const mediumTolerances: readonly GeneralTolerance[] = [
  { over: 0.5, to: 3, plusMinus: 0.1, source },
  { over: 3, to: 6, plusMinus: 0.1, source },
  { over: 6, to: 30, plusMinus: 0.2, source },
  { over: 30, to: 120, plusMinus: 0.3, source },
  { over: 120, to: 400, plusMinus: 0.5, source },
  { over: 400, to: 1000, plusMinus: 0.8, source },
  { over: 1000, to: 2000, plusMinus: 1.2, source: ourChoice('the last step of class m carried on') },
];

/** How far (mm, plus or minus) a machined size may be off; that of the nearest row outside the table. */
export function mediumTolerance(size: number): number {
  const row = mediumTolerances.find(({ to }) => size <= to) ?? mediumTolerances[mediumTolerances.length - 1];
  return row.plusMinus;
}
