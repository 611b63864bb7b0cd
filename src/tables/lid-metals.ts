import { published, type RowSource, type Sourced } from './source.ts';

/** What lids and cans are made of. Blank (undefined) where no figure is at hand: then the plan must give it. */
export interface LidMetal {
  readonly name: string;
  readonly also: readonly string[];
  readonly modulusPa: number;
  readonly poisson: number;
  readonly densityKgM3: number;
  readonly heatJKgK: number;
  readonly conductivityWMK: Sourced;
  /** Yield strength at temperatures up to `yieldToC`; nothing is known here above that. */
  readonly yieldPa: number;
  readonly yieldToC: number;
  readonly source: RowSource;
}

export const lidMetals: readonly LidMetal[] = [
  {
    // The least of structural steels: a word such as "steel" promises no more.
    name: 'mild steel',
    also: ['steel', 's235', 's235jr', 'a36'],
    // 0.9 of 210 GPa at 200 C.
    modulusPa: 189e9,
    poisson: 0.3,
    densityKgM3: 7850,
    // 425 + 0.773 T - 1.69e-3 T^2 + 2.22e-6 T^3 (EN 1993-1-2:2005, 3.4.1.2) at 100 C, midway.
    heatJKgK: 490,
    conductivityWMK: {
      value: 48,
      source: published('54 - 0.0333 T W/mK of carbon steel, EN 1993-1-2:2005, 3.4.1.3, at 180 C'),
    },
    // 0.807 of 215 MPa, that of plates up to 80 mm: what it stands at 200 C without leaving the straight line.
    yieldPa: 173e6,
    yieldToC: 200,
    source: published(
      'S235 of EN 10025-2 over 40 mm thick, 215 MPa, with the factors of EN 1993-1-2:2005, table 3.1, at 200 C; Franssen and Vila Real, Fire Design of Steel Structures (2012), table C.1',
    ),
  },
  {
    name: '6061-T6',
    also: ['aluminum 6061-t6'],
    modulusPa: 68.9e9,
    poisson: 0.33,
    densityKgM3: 2700,
    heatJKgK: 896,
    conductivityWMK: {
      value: 167,
      source: published('6061-T6, AA typical, glemco.com/capabilities/material-expertise/aluminum-6061-t6'),
    },
    yieldPa: 241e6,
    // It is aged at 160 to 177 C: held there again and again it softens, and no figure for that is at hand.
    yieldToC: 100,
    source: published(
      '6061-T6, at least 35 ksi (ASTM B209), as the article on 6061 in Wikipedia has it; the rest AA typical, graspengineering.com/material-properties-aluminum-6061-t6-6061-t651',
    ),
  },
];

/** The row for a name as people write it; undefined where the table has none. */
export function lidMetal(written: string): LidMetal | undefined {
  const plain = written.trim().toLowerCase();
  return lidMetals.find(({ name, also }) => name.toLowerCase() === plain || also.includes(plain));
}
