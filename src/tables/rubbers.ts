import { fromMemory, published, type Sourced } from './source.ts';

/** Rubber of the halves. A property without a source at hand is left out: then the plan must give it. */
export interface Rubber {
  readonly name: string;
  readonly also: readonly string[];
  readonly diffusivityM2S?: Sourced;
  readonly conductivityWMK?: Sourced;
  readonly densityKgM3?: Sourced;
  /** Volume expansion. */
  readonly expansionPerK?: Sourced;
}

const thermal = published(
  'natural rubber, unfilled: table of thermal properties of polymers by a maker of instruments',
);

const rubbers: readonly Rubber[] = [
  {
    name: 'natural rubber, gum',
    also: ['natural rubber', 'gum', 'natural rubber gum'],
    // 0.14 W/mK / (920 kg/m3 x 1950 J/kgK), the middles of the ranges in the table.
    diffusivityM2S: { value: 0.78e-7, source: thermal },
    conductivityWMK: { value: 0.14, source: thermal },
    densityKgM3: { value: 920, source: thermal },
    expansionPerK: { value: 6.6e-4, source: published('volume expansion of natural rubber, unfilled') },
  },
  {
    name: 'filled organic rubber',
    also: ['filled rubber', 'filled natural rubber', 'organic rubber'],
    diffusivityM2S: { value: 1.1e-7, source: fromMemory('0.22 W/mK, 1150 kg/m3, 1700 J/kgK') },
    conductivityWMK: { value: 0.22, source: fromMemory('filled organic rubber') },
    densityKgM3: { value: 1150, source: fromMemory('filled organic rubber') },
    // The fill expands less than the gum, so the gum's figure is the cautious end for a tight can.
    expansionPerK: { value: 6.6e-4, source: published('volume expansion of natural rubber, unfilled') },
  },
  { name: 'silicone', also: ['silicone rubber'] },
];

/**
 * Bulk modulus of rubber, Pa: shows how high the pressure in a tight can would climb. About 2 GPa, whatever the
 * compound.
 */
export const rubberBulkModulus: Sourced = { value: 2e9, source: fromMemory('bulk modulus of rubber') };

/** Raw rubber is seldom cured any cooler, C. */
export const coolestCure: Sourced = { value: 140, source: fromMemory('raw rubber is cured at 140 to 175 C') };

/** The row for a compound's kind as people write it; undefined where the table has none. */
export function rubberKind(written: string): Rubber | undefined {
  const plain = written.trim().toLowerCase();
  return rubbers.find(({ name, also }) => name === plain || also.includes(plain));
}
