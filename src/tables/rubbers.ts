import { computed, fromMemory, ourChoice, published, type Sourced } from './source.ts';

/** Least and most of a property: each check takes the end that is strict for it. */
interface SourcedRange {
  readonly least: Sourced;
  readonly most: Sourced;
}

/** Rubber of the halves. A property without a source at hand is left out: then the plan must give it. */
export interface Rubber {
  readonly name: string;
  readonly also: readonly string[];
  readonly diffusivityM2S?: Sourced;
  readonly conductivityWMK?: Sourced;
  readonly densityKgM3?: Sourced;
  /** Volume expansion. */
  readonly expansionPerK?: SourcedRange;
}

const thermal = published(
  'natural rubber, unfilled: polymers.netzsch.com/Materials/Details/58; middles of its ranges',
);
const diffused = computed('0.14 W/mK / (920 kg/m3 x 1950 J/kgK), the middles of those ranges');
const linear = 'three times the linear 180 to 260e-6 /K of polymers.netzsch.com/Materials/Details/58';
const halved = 'fillers take up to half of it, engineeringniche.com on thermal expansion of elastomers';

const gumMost: Sourced = { value: 7.8e-4, source: computed(linear) };

export const rubbers: readonly Rubber[] = [
  {
    name: 'natural rubber, gum',
    also: ['natural rubber', 'gum', 'natural rubber gum'],
    diffusivityM2S: { value: 0.78e-7, source: diffused },
    conductivityWMK: { value: 0.14, source: thermal },
    densityKgM3: { value: 920, source: thermal },
    expansionPerK: { least: { value: 5.4e-4, source: computed(linear) }, most: gumMost },
  },
  {
    // How it is filled its maker knows: without his density nothing of it is weighed.
    name: 'filled organic rubber',
    also: ['filled rubber', 'filled natural rubber', 'organic rubber'],
    diffusivityM2S: { value: 1.1e-7, source: fromMemory('0.22 W/mK, 1150 kg/m3, 1700 J/kgK') },
    conductivityWMK: { value: 0.22, source: fromMemory('filled organic rubber') },
    expansionPerK: {
      least: { value: 2.7e-4, source: computed(`${linear}; ${halved}`) },
      most: gumMost,
    },
  },
  { name: 'silicone', also: ['silicone rubber'] },
];

/**
 * Bulk modulus of rubber, Pa: shows how high the pressure in a tight can would climb. No finding rests on it: no can
 * holds a hundredth of that.
 */
export const rubberBulkModulus: Sourced = { value: 2e9, source: fromMemory('bulk modulus of rubber') };

/** Raw rubber is seldom cured any cooler, C. */
export const coolestCure: Sourced = {
  value: 140,
  source: ourChoice('raw rubber is cured at 140 to 175 C in common practice'),
};

/** The row for a compound's kind as people write it; undefined where the table has none. */
export function rubberKind(written: string): Rubber | undefined {
  const plain = written.trim().toLowerCase();
  return rubbers.find(({ name, also }) => name === plain || also.includes(plain));
}
