import { computed, published, type RowSource, type Sourced } from './source.ts';

/** A metal as it goes into casting alloys. */
export interface Metal {
  readonly symbol: string;
  readonly solidKgM3: number;
  readonly meltsC: number;
  /** When just molten, and how much lighter with each kelvin. */
  readonly liquidKgM3: number;
  readonly lighterPerK: number;
  readonly liquidSource: RowSource;
}

export const solidSource = published(
  'densities of the elements near room temperature, material-properties.org/density-of-chemical-elements',
);
const carried = 'coefficients as the program thermolib 0.8.1 carries them';
const assael = (where: string): RowSource =>
  published(`reference correlation of Assael et al., ${where}; ${carried}`);
const jpcrd2010 = assael('J. Phys. Chem. Ref. Data 39 (2010) 033105');
const hthp2012 = assael('High Temp. High Press. 41 (2012) 161');
const jpcrd2012 = assael('J. Phys. Chem. Ref. Data 41 (2012) 033101');
const jpcrd2006 = assael('J. Phys. Chem. Ref. Data 35 (2006) 285');

/** Symbol, solid kg/m3, melting point C, liquid kg/m3 there, kg/m3 less for each kelvin. */
const rows: readonly (readonly [string, number, number, number, number, RowSource])[] = [
  ['Sn', 7310, 231.93, 6979, 0.652, jpcrd2010],
  ['Cu', 8920, 1084.62, 7997, 0.819, jpcrd2010],
  ['Sb', 6697, 625.85, 6467, 0.608, hthp2012],
  ['Bi', 9780, 271.4, 10_028, 1.213, hthp2012],
  ['Pb', 11_340, 327.46, 10_656, 1.239, hthp2012],
  ['Zn', 7140, 419.53, 6559, 0.884, jpcrd2012],
  ['In', 7310, 156.6, 7022, 0.762, jpcrd2012],
  ['Cd', 8650, 321.07, 8008, 1.251, jpcrd2012],
  ['Al', 2700, 660.32, 2377, 0.311, jpcrd2006],
];

export const metals: readonly Metal[] = rows.map(
  ([symbol, solidKgM3, meltsC, liquidKgM3, lighterPerK, liquidSource]) => ({
    symbol,
    solidKgM3,
    meltsC,
    liquidKgM3,
    lighterPerK,
    liquidSource,
  }),
);

/** Shares of the mass by the symbols of the metals; together 1. */
export type Composition = Readonly<Record<string, number>>;

/** Volumes of the metals add: within 0.3 % of what was measured of tin and lead. */
const volumesAdd = 'volumes add as for tin and lead in High Temp. 44 (2006) no. 3, within 0.3 %';

function mixed(composition: Composition, densityOf: (metal: Metal) => number): number {
  const parts = Object.entries(composition).map(([symbol, share]) => {
    const metal = metals.find((one) => one.symbol === symbol);
    if (!metal) throw new RangeError(`mixed: no metal ${symbol}`);
    return share / densityOf(metal);
  });
  return 1 / parts.reduce((sum, part) => sum + part, 0);
}

/** Density of a solid alloy, kg/m3. */
export const solidDensity = (composition: Composition): Sourced => ({
  value: mixed(composition, ({ solidKgM3 }) => solidKgM3),
  source: computed(`by composition; ${solidSource.text}; ${volumesAdd}`),
});

/**
 * Density of a molten alloy at `celsius`, kg/m3. A metal that melts higher takes part as if it were molten too: its
 * line is carried on below its melting point.
 */
export const liquidDensity = (composition: Composition, celsius: number): Sourced => ({
  value: mixed(
    composition,
    ({ liquidKgM3, lighterPerK, meltsC }) => liquidKgM3 - lighterPerK * (celsius - meltsC),
  ),
  source: computed(
    `by composition; liquid metals by the reference correlations of Assael et al., 2006 to 2012; ${volumesAdd}`,
  ),
});
