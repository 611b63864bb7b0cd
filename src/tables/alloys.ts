import { fromMemory, published, type Sourced } from './source.ts';

/** A metal that is cast. A property without a source at hand is left out: then the plan must give it. */
export interface Alloy {
  readonly name: string;
  readonly also: readonly string[];
  readonly densityKgM3?: Sourced;
  readonly solidusC?: Sourced;
  readonly liquidusC?: Sourced;
  /** Surface tension when molten, N/m. */
  readonly tensionNM?: Sourced;
}

const tinTension: Sourced = { value: 0.55, source: fromMemory('liquid tin near melting') };
const solders = published('a table of solder alloys');
const pewter2 = published('a table of alloy data, rounded');
const zinc = published("a caster's data sheet; other sheets say 6.7 g/cm3");

const alloys: readonly Alloy[] = [
  {
    name: 'tin',
    also: ['pure tin', 'sn'],
    densityKgM3: { value: 7280, source: fromMemory('pure tin') },
    solidusC: { value: 231.9, source: fromMemory('pure tin') },
    liquidusC: { value: 231.9, source: fromMemory('pure tin') },
    tensionNM: tinTension,
  },
  {
    name: 'pewter 92-7.5-0.5',
    also: ['pewter b560 type 1', 'pewter type 1', 'lead-free pewter', 'sn92sb7.5cu0.5'],
    densityKgM3: { value: 7300, source: fromMemory('ASTM B560 type 1') },
    // Its melting range was not found; 92Sn-8Sb, which is near, begins to melt at 246 C.
    tensionNM: tinTension,
  },
  {
    name: 'pewter 91-7-2',
    also: ['pewter b560 type 2', 'pewter type 2', 'sn91sb7cu2'],
    densityKgM3: { value: 7300, source: pewter2 },
    solidusC: { value: 240, source: pewter2 },
    liquidusC: { value: 300, source: pewter2 },
    tensionNM: tinTension,
  },
  // Tin of 95 to 98 %: nothing but its composition is at hand.
  { name: 'pewter b560 type 3', also: ['pewter type 3'] },
  {
    name: 'sn63pb37',
    also: ['63-37', 'tin-lead 63-37'],
    densityKgM3: { value: 8400, source: solders },
    solidusC: { value: 183, source: solders },
    liquidusC: { value: 183, source: solders },
  },
  {
    name: 'bi58sn42',
    also: ['bismuth-tin', '58bi-42sn'],
    densityKgM3: { value: 8560, source: fromMemory('Bi58Sn42') },
    solidusC: { value: 138, source: published('an encyclopedia article on solder alloys') },
    liquidusC: { value: 138, source: published('an encyclopedia article on solder alloys') },
  },
  {
    name: 'zamak 3',
    also: ['zamak3', 'za3', 'zinc alloy 3'],
    densityKgM3: { value: 6600, source: zinc },
    solidusC: { value: 381, source: zinc },
    liquidusC: { value: 387, source: zinc },
  },
];

/** The row for a name as people write it; undefined where the table has none. */
export function alloyNamed(written: string): Alloy | undefined {
  const plain = written.trim().toLowerCase();
  return alloys.find(({ name, also }) => name === plain || also.includes(plain));
}
