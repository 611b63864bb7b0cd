import { type Composition, solidDensity } from './metals.ts';
import { fromMemory, published, type Sourced } from './source.ts';

/** A metal that is cast. A property without a source at hand is left out: then the plan must give it. */
export interface Alloy {
  readonly name: string;
  readonly also: readonly string[];
  readonly composition?: Composition;
  /** Solid. */
  readonly densityKgM3?: Sourced;
  readonly solidusC?: Sourced;
  readonly liquidusC?: Sourced;
  /** Surface tension when molten, N/m. */
  readonly tensionNM?: Sourced;
}

/** Of little weight: it says what detail fills, and protects nobody. */
const tinTension: Sourced = { value: 0.55, source: fromMemory('liquid tin near melting') };
const fixedPoint = published('defining fixed point of the ITS-90, freezing point of tin');
const solders = published('solders, alasir.com/reference/solder_alloys');
const pewter2 = published(
  'UNS L13912, makeitfrom.com/material-properties/Type-2-L13912-Sheet-Pewter, rounded',
);
const zinc = published("a die caster's table, ctprecisioncastings.com/materials; others say 6.7 g/cm3");
const fusible = published('table of fusible alloys in the article on Field’s metal, en.wikipedia.org');
const solderDiagrams = published('calculated phase diagrams of solders, metallurgy.nist.gov/phase/solder');

const at = (value: number, source: Sourced['source']): Sourced => ({ value, source });
/** Eutectic, or so near that one figure is given: it melts all at once. */
const melting = (value: number, source: Sourced['source']) => ({
  solidusC: at(value, source),
  liquidusC: at(value, source),
});
const made = (composition: Composition) => ({ composition, densityKgM3: solidDensity(composition) });

export const alloys: readonly Alloy[] = [
  {
    name: 'tin',
    also: ['pure tin', 'sn'],
    ...made({ Sn: 1 }),
    ...melting(231.93, fixedPoint),
    tensionNM: tinTension,
  },
  {
    name: 'pewter 92-7.5-0.5',
    also: ['pewter b560 type 1', 'pewter type 1', 'lead-free pewter', 'sn92sb7.5cu0.5'],
    // ASTM B560, nominal. Its melting range was not found; 92Sn-8Sb, which is near, begins to melt at 246 C.
    ...made({ Sn: 0.92, Sb: 0.075, Cu: 0.005 }),
    tensionNM: tinTension,
  },
  {
    name: 'pewter 91-7-2',
    also: ['pewter b560 type 2', 'pewter type 2', 'sn91sb7cu2'],
    composition: { Sn: 0.91, Sb: 0.07, Cu: 0.02 },
    densityKgM3: at(7300, pewter2),
    solidusC: at(240, pewter2),
    liquidusC: at(300, pewter2),
    tensionNM: tinTension,
  },
  // Tin of 95 to 98 %: nothing but its composition is at hand.
  { name: 'pewter b560 type 3', also: ['pewter type 3'] },
  {
    name: 'sn63pb37',
    also: ['63-37', 'tin-lead 63-37'],
    composition: { Sn: 0.63, Pb: 0.37 },
    densityKgM3: at(8400, solders),
    ...melting(183, solders),
  },
  // How much lead, the word does not say; no alloy of tin and lead melts sooner.
  { name: 'leaded pewter', also: ['tin-lead pewter'], solidusC: at(183, solderDiagrams) },
  {
    name: 'bi58sn42',
    also: ['bismuth-tin', '58bi-42sn'],
    ...made({ Bi: 0.58, Sn: 0.42 }),
    ...melting(138, solderDiagrams),
  },
  {
    name: "wood's metal",
    also: ['woods metal', 'bi50pb26.7sn13.3cd10'],
    ...made({ Bi: 0.5, Pb: 0.267, Sn: 0.133, Cd: 0.1 }),
    ...melting(70, fusible),
  },
  {
    name: "field's metal",
    also: ['fields metal', 'in51bi32.5sn16.5'],
    ...made({ In: 0.51, Bi: 0.325, Sn: 0.165 }),
    ...melting(62, fusible),
  },
  {
    name: 'zamak 3',
    also: ['zamak3', 'za3', 'zinc alloy 3'],
    composition: { Zn: 0.96, Al: 0.04 },
    densityKgM3: at(6600, zinc),
    solidusC: at(381, zinc),
    liquidusC: at(387, zinc),
  },
];

/** The row for a name as people write it; undefined where the table has none. */
export function alloyNamed(written: string): Alloy | undefined {
  const plain = written.trim().toLowerCase().replaceAll('\u2019', "'");
  return alloys.find(({ name, also }) => name === plain || also.includes(plain));
}
