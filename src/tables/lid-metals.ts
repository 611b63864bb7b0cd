import { fromMemory, published, type RowSource, type Sourced } from './source.ts';

/** What lids are made of. Blank (undefined) where no figure is at hand: then the plan must give it. */
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

const lidMetals: readonly LidMetal[] = [
  {
    name: 'mild steel',
    also: ['steel', 's235', 's235jr', 'a36'],
    modulusPa: 200e9,
    poisson: 0.3,
    densityKgM3: 7850,
    heatJKgK: 490,
    conductivityWMK: {
      value: 48,
      source: fromMemory('54 - 0.0333 T W/mK of carbon steel, EN 1993-1-2, sec. 3.4.1.3, at 180 C'),
    },
    yieldPa: 170e6,
    yieldToC: 200,
    source: fromMemory(
      'plain structural steel, yield lowered to what pressure-vessel steel P235 has at 200 C',
    ),
  },
  {
    name: '6061-T6',
    also: ['aluminum 6061-t6'],
    modulusPa: 68.9e9,
    poisson: 0.33,
    densityKgM3: 2700,
    heatJKgK: 896,
    conductivityWMK: { value: 167, source: fromMemory('6061-T6') },
    yieldPa: 276e6,
    // It is aged at 160 to 177 C: held there again and again it softens, and no figure for that is at hand.
    yieldToC: 100,
    source: published(
      '6061-T6 as maker sheets give it (yield 276 MPa, modulus 68.9 GPa); density and heat from memory',
    ),
  },
];

/** The row for a name as people write it; undefined where the table has none. */
export function lidMetal(written: string): LidMetal | undefined {
  const plain = written.trim().toLowerCase();
  return lidMetals.find(({ name, also }) => name.toLowerCase() === plain || also.includes(plain));
}
