import { materialName } from './material-names.ts';
import { published, type Sourced } from './source.ts';

/**
 * What rigid halves are made of, printed or machined solid. Left out is what is not known: then it is a stop. Of a range
 * the end is taken that is strict for halves that turn: heavy, and weak. No plastic has a Poisson's ratio here; then
 * the greatest there is counts.
 */
export interface HalfMaterial {
  readonly name: string;
  readonly also: readonly string[];
  readonly densityKgM3?: Sourced;
  /** Tensile strength at room temperature, printed, in the weakest direction. */
  readonly strengthPa?: Sourced;
  readonly poisson?: Sourced;
}

const pla = published(
  'printed PLA by ASTM D638 and D792, weakest direction; pro3dcomposites.com/materials/pla',
);
const petg = published('printed PETG by ISO 527-2, upright, 25 to 38 MPa; additive.tools/materials/petg');
const abs = published('density of the plastic, Processes 13 (2025) 2733, its section 2.1');
const aluminum = published(
  '6061-T6, AA typical, glemco.com/capabilities/material-expertise/aluminum-6061-t6',
);
const least = published('6061-T6, at least 42 ksi (ASTM B209), as the article on 6061 in Wikipedia has it');

export const halfMaterials: readonly HalfMaterial[] = [
  {
    name: 'pla',
    also: [],
    densityKgM3: { value: 1264, source: pla },
    strengthPa: { value: 26e6, source: pla },
  },
  {
    name: 'petg',
    also: [],
    densityKgM3: { value: 1290, source: petg },
    strengthPa: { value: 25e6, source: petg },
  },
  // The strengths of that paper stand beside a glass transition of PLA at 137 C, which is wrong: not taken.
  { name: 'abs', also: [], densityKgM3: { value: 1040, source: abs } },
  { name: 'asa', also: [] },
  { name: 'resin', also: ['standard resin', 'sla resin'] },
  {
    name: '6061-t6',
    also: ['aluminum 6061-t6', '6061'],
    densityKgM3: { value: 2700, source: aluminum },
    strengthPa: { value: 290e6, source: least },
    poisson: { value: 0.33, source: aluminum },
  },
  // Which alloy, and so how strong, such a word does not say.
  { name: 'aluminum', also: ['aluminium'], densityKgM3: { value: 2700, source: aluminum } },
];

/** The row for a material as people write it; undefined where the table has none. */
export function halfMaterial(written: string): HalfMaterial | undefined {
  const plain = materialName(written);
  return halfMaterials.find(({ name, also }) => name === plain || also.includes(plain));
}
