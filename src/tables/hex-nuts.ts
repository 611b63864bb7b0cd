import { mmPerInch } from '../geometry/index.ts';
import { published, type RowSource } from './source.ts';

/** A plain hexagon nut, after whose hexagon a boss can be shaped. Lengths in mm. */
export interface HexNut {
  readonly size: string;
  /** Width across flats s, greatest. */
  readonly acrossFlats: number;
  /** Height m, greatest. */
  readonly height: number;
  readonly source: RowSource;
}

const source = published(
  "ISO 4032 style 1, product grades A and B, read off suppliers' tables; DIN 934 has M10 and M12 1 mm wider",
);

const inchSource = published("ASME B18.2.2 hex nuts, read off suppliers' tables");

/** Size, width across flats, height; mm. */
const metricRows = [
  ['M4', 7, 3.2],
  ['M5', 8, 4.7],
  ['M6', 10, 5.2],
  ['M8', 13, 6.8],
  ['M10', 16, 8.4],
  ['M12', 18, 10.8],
  ['M16', 24, 14.8],
  ['M20', 30, 18],
] as const;

/** The same in inches. */
const inchRows = [
  ['1/4', 7 / 16, 0.226],
  ['5/16', 1 / 2, 0.273],
  ['3/8', 9 / 16, 0.337],
  ['1/2', 3 / 4, 0.448],
] as const;

export const hexNuts: readonly HexNut[] = [
  ...metricRows.map(([size, acrossFlats, height]) => ({ size, acrossFlats, height, source })),
  ...inchRows.map(([size, across, high]) => ({
    size,
    acrossFlats: across * mmPerInch,
    height: high * mmPerInch,
    source: inchSource,
  })),
];

/** The row of a thread (`M8`, `3/8`); undefined where the table has none. */
export const hexNut = (size: string): HexNut | undefined => hexNuts.find((row) => row.size === size);
