import { mmPerInch } from '../geometry/index.ts';
import { ourChoice, type RowSource } from './source.ts';

/** A thickness halves are stocked in, mm. */
export interface StockThickness {
  readonly name: string;
  readonly thickness: number;
  readonly source: RowSource;
}

/** A disc size of the trade, mm; the can's inside is 1 to 2 mm larger. */
export interface StockDisc {
  readonly name: string;
  readonly diameter: number;
  readonly source: RowSource;
}

const halves = ourChoice('common stock of uncured halves, 1/4 to 1 in by 1/8 in');
const discs = ourChoice('common disc sizes');

const eighths = ['1/4', '3/8', '1/2', '5/8', '3/4', '7/8', '1'];

/** Thinnest first. */
export const stockThicknesses: readonly StockThickness[] = eighths.map((name, i) => ({
  name: `${name} in`,
  thickness: ((i + 2) / 8) * mmPerInch,
  source: halves,
}));

/** Smallest first. */
export const stockDiscs: readonly StockDisc[] = [6, 9, 10, 12, 15, 18].map((inches) => ({
  name: `${inches} in`,
  diameter: inches * mmPerInch,
  source: discs,
}));

// A thickness entered as 12.7 must find the half-inch row in spite of rounding.
const slack = 1e-6;

/** The thinnest stock of at least `needed` mm; undefined where even the thickest is too thin. */
export const nextStock = (needed: number): StockThickness | undefined =>
  stockThicknesses.find(({ thickness }) => thickness >= needed - slack);
