import type { FigureEntry } from './entry.ts';

/** The can: closing, packing, cure, heat. */
export const canFigures = {
  'closing.force': {
    label: 'force that opens the can',
    unit: 'N',
    means: 'Force with which the rubber pushes the can open.',
  },
  'closing.held': {
    label: 'held by clamps or press',
    unit: 'N',
    means: 'Force the clamps together, or the press, are rated to hold.',
  },
  'closing.clamps': {
    label: 'clamps',
    unit: 'count',
    means: 'Clamps on the can, as the plan counts them or as many as are needed.',
  },
  'closing.boltProof': {
    label: 'proof load of one bolt',
    unit: 'N',
    means: 'Proof load of one drawing bolt; bolts are not counted as holding.',
  },
  'closing.boltShare': {
    label: 'share of bolts, clamps gone',
    unit: 'ratio',
    means: "Share of all bolts' proof load, were the clamps to let go.",
  },
  'closing.bolts': {
    label: 'drawing bolts',
    unit: 'count',
    means: 'Bolts that draw the can shut, as the plan counts them or spaces them.',
  },
  'closing.lid': {
    label: 'thinnest lid',
    unit: 'mm',
    means: 'Thickness of the thinnest plate that closes the can.',
  },
  'closing.lidStress': { label: 'stress in a lid', unit: 'Pa', means: 'Greatest bending stress in a lid.' },
  'closing.lidBow': { label: 'bow of a lid', unit: 'mm', means: 'How far the middle of a lid bows outward.' },
  'closing.wallHoop': {
    label: 'hoop stress, can wall',
    unit: 'Pa',
    means: 'Stress along the hoop at the bore of the can.',
  },
  'closing.wallStress': {
    label: 'stress difference there',
    unit: 'Pa',
    means: 'Stress along the hoop less that across the wall, by which the can yields.',
  },
  'heat.superheat': {
    label: 'superheat of the metal',
    unit: 'K',
    means: 'How far over its liquidus the metal is poured.',
  },
  'heat.limit': {
    label: 'a fixture or master stands',
    unit: 'C',
    means: 'Highest temperature a fixture or master is trusted to stand in the can.',
  },
  'heat.halfLimit': {
    label: 'the halves stand',
    unit: 'C',
    means: 'Highest pouring temperature the halves are trusted to stand.',
  },
  'cure.middle': {
    label: 'middle when heating ends',
    unit: 'C',
    means: 'Temperature in the middle of the stack when heating ends.',
  },
  'cure.face': {
    label: 'faces when heating ends',
    unit: 'C',
    means: 'Temperature of its faces when heating ends.',
  },
  'cure.gatheredHot': {
    label: 'cure in the middle, heated',
    unit: 's',
    means: "Cure in the middle when heating ends, as time at the compound's reference temperature.",
  },
  'cure.gathered': { label: 'the same, cooled', unit: 's', means: 'The same with cooling in the can.' },
  'cure.share': {
    label: 'share of t90, middle',
    unit: 'ratio',
    means: 'Cure gathered in the middle, of the t90 of the compound.',
  },
  'cure.gatheredFace': {
    label: 'cure at the faces',
    unit: 's',
    means: 'Cure gathered at the faces, cooling in the can included.',
  },
  'cure.needed': {
    label: 'least time of heating',
    unit: 's',
    means: 'Least time of heating with which the middle reaches t90.',
  },
  'ledger.displaced': {
    label: 'displaced by a master',
    unit: 'mm3',
    means: 'Rubber that a master takes the place of.',
  },
  'ledger.buildUp': {
    label: 'needed at a build-up',
    unit: 'mm3',
    means: 'What a build-up fills: a fixture, or rubber cut to its outline.',
  },
  'pack.can': { label: 'room in the can', unit: 'mm3', means: 'Room in the can.' },
  'pack.laidIn': {
    label: 'rubber to lay in',
    unit: 'kg',
    means: 'Raw rubber laid into the can, both halves, after all cutting away.',
  },
  'pack.cold': {
    label: 'laid in, cold',
    unit: 'mm3',
    means: 'Rubber, masters, bosses, sprue form, tabs and build-ups laid in, cold.',
  },
  'pack.excess': {
    label: 'too much when hot',
    unit: 'mm3',
    means: 'What they take up more than the can has, hot.',
  },
  'pack.lock': {
    label: 'pressure if held in',
    unit: 'Pa',
    means: 'Pressure that a can would have to bear which lets none of it out.',
  },
} as const satisfies Record<string, FigureEntry>;
