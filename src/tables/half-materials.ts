import { materialName } from './material-names.ts';
import { fromMemory, published, type Sourced } from './source.ts';

/** What rigid halves are made of, printed or machined solid. Left out is what is not known: then it is a stop. */
export interface HalfMaterial {
  readonly name: string;
  readonly also: readonly string[];
  readonly densityKgM3?: Sourced;
  /** Tensile strength at room temperature, in the layers. */
  readonly strengthPa?: Sourced;
  readonly poisson?: Sourced;
}

const filament = published('strengths of printed filament measured in a journal article of 2025');
const aluminum = published('6061-T6 as maker sheets give it');
const plastic: Sourced = { value: 0.4, source: fromMemory('plastics, the high end') };
const dense = (value: number): Sourced => ({ value, source: fromMemory('density of the solid material') });

const halfMaterials: readonly HalfMaterial[] = [
  {
    name: 'pla',
    also: [],
    densityKgM3: dense(1240),
    strengthPa: { value: 53e6, source: filament },
    poisson: plastic,
  },
  {
    name: 'petg',
    also: [],
    densityKgM3: dense(1270),
    strengthPa: { value: 50e6, source: filament },
    poisson: plastic,
  },
  {
    name: 'abs',
    also: [],
    densityKgM3: dense(1040),
    strengthPa: { value: 40e6, source: filament },
    poisson: plastic,
  },
  { name: 'asa', also: [], densityKgM3: dense(1070), poisson: plastic },
  {
    name: 'resin',
    also: ['standard resin', 'sla resin'],
    densityKgM3: dense(1180),
    strengthPa: { value: 55e6, source: fromMemory('standard printing resin, the low end of 55 to 65 MPa') },
    poisson: plastic,
  },
  {
    name: '6061-t6',
    also: ['aluminum 6061-t6', '6061'],
    densityKgM3: { value: 2700, source: aluminum },
    strengthPa: { value: 310e6, source: aluminum },
    poisson: { value: 0.33, source: aluminum },
  },
  // Which alloy, and so how strong, such a word does not say.
  { name: 'aluminum', also: ['aluminium'], densityKgM3: dense(2700) },
];

/** The row for a material as people write it; undefined where the table has none. */
export function halfMaterial(written: string): HalfMaterial | undefined {
  const plain = materialName(written);
  return halfMaterials.find(({ name, also }) => name === plain || also.includes(plain));
}
