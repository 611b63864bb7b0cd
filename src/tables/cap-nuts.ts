import { mmPerInch } from '../geometry/index.ts';
import { published, type RowSource } from './source.ts';

/**
 * A domed cap nut as registration bosses use it: hexagon, short collar, dome. Lengths in mm.
 * The dome is taken as a half ball of the collar's diameter ending at full height, as DIN 1587 draws it
 * (r = d_k / 2), so the collar is `height - hexHeight - domeDiameter / 2` high.
 */
export interface CapNut {
  /** Trade size: `M8`, or the thread in inches as a fraction, `3/8`. */
  readonly size: string;
  readonly standard: 'DIN 1587:2000' | 'SAE J483a low crown';
  /** Width across flats s: greatest, and least allowed. */
  readonly acrossFlats: number;
  readonly acrossFlatsMin: number;
  /** Whole height h, greatest. */
  readonly height: number;
  /** Height m of the hexagon, greatest. */
  readonly hexHeight: number;
  /** Diameter d_k of collar and dome, nominal. */
  readonly domeDiameter: number;
  readonly source: RowSource;
}

const din = 'DIN 1587:2000';
const dinSource = published(
  `${din}, product grade A, read off suppliers' tables; M10 and M12 have the 2000 widths`,
);
const sae = 'SAE J483a low crown';
const saeSource = published(
  "SAE J483a low crown, Machinery's Handbook 31 p. 1681; columns told by the letters of its drawing",
);

type Row = readonly [
  size: string,
  acrossFlats: number,
  acrossFlatsMin: number,
  height: number,
  domeDiameter: number,
  hexHeight: number,
];

// The standard begins at M4 and ends at M24: there is no M3 row.
const dinRows: readonly Row[] = [
  ['M4', 7, 6.78, 8, 6.5, 3.2],
  ['M5', 8, 7.78, 10, 7.5, 4],
  ['M6', 10, 9.78, 12, 9.5, 5],
  ['M8', 13, 12.73, 15, 12.5, 6.5],
  ['M10', 16, 15.73, 18, 15, 8],
  ['M12', 18, 17.73, 22, 17, 10],
  ['M16', 24, 23.67, 28, 23, 13],
];

/** Inches. */
const saeRows: readonly Row[] = [
  ['1/4', 0.4375, 0.428, 0.47, 0.41, 0.22],
  ['5/16', 0.5, 0.489, 0.53, 0.47, 0.25],
  ['3/8', 0.5625, 0.551, 0.62, 0.53, 0.28],
];

const nut = (row: Row, unit: number, standard: CapNut['standard'], source: RowSource): CapNut => ({
  size: row[0],
  standard,
  acrossFlats: row[1] * unit,
  acrossFlatsMin: row[2] * unit,
  height: row[3] * unit,
  domeDiameter: row[4] * unit,
  hexHeight: row[5] * unit,
  source,
});

export const capNuts: readonly CapNut[] = [
  ...dinRows.map((row) => nut(row, 1, din, dinSource)),
  ...saeRows.map((row) => nut(row, mmPerInch, sae, saeSource)),
];

/** The row for a size as people write it (`M8`, `m8`, `3/8`, `3/8 in`, `3/8"`); undefined where the table has none. */
export function capNut(size: string): CapNut | undefined {
  const plain = size
    .trim()
    .replace(/\s*(in\.?|inch|")$/i, '')
    .toUpperCase();
  return capNuts.find((row) => row.size === plain);
}
