/**
 * Every unit a plan may be written in. A unit turns a written number n into the internal one by
 * (n - shift) * num / den; `num`, `den` and the shift's parts are whole numbers wherever the unit is defined exactly,
 * so that `3/8 in` is 9.525 mm to the last bit.
 *
 * Sources of the factors: international inch 25.4 mm, avoirdupois pound 0.45359237 kg, standard gravity
 * 9.80665 m/s2, thermochemical calorie 4.184 J, British thermal unit (IT) 1055.05585262 J, all exact in NIST Special Publication 811 (2008), appendix B; degree
 * Fahrenheit and kelvin as in its appendix B.8; bar, minute, hour and degree of angle in ISO 80000-1 and -3.
 */
export interface PlanUnit {
  /** As shown to people. */
  readonly name: string;
  /** Other spellings that are read. */
  readonly also?: readonly string[];
  readonly num: number;
  readonly den: number;
  readonly shift?: readonly [number, number];
}

export interface QuantityKind {
  /** What the field holds, with its article: `a length`. */
  readonly noun: string;
  readonly internal: string;
  /** Unit of a bare number; without one the unit must be written. */
  readonly bare?: string;
  readonly units: readonly PlanUnit[];
  readonly examples: readonly string[];
  /** Units that differ in the case of a letter only, so that case must be as written here. */
  readonly exactCase?: true;
}

const unit = (name: string, num: number, den: number, ...also: string[]): PlanUnit => ({
  name,
  num,
  den,
  also,
});

const length: QuantityKind = {
  noun: 'a length',
  internal: 'mm',
  bare: 'mm',
  examples: ['12.5 mm', '3/8 in', '1 1/2"'],
  units: [
    unit('mm', 1, 1, 'millimeter', 'millimeters', 'millimetre', 'millimetres'),
    unit('cm', 10, 1, 'centimeter', 'centimeters', 'centimetre', 'centimetres'),
    unit('m', 1000, 1, 'meter', 'meters', 'metre', 'metres'),
    unit('um', 1, 1000, 'micron', 'microns'),
    unit('in', 127, 5, '"', "''", 'inch', 'inches'),
    unit('thou', 127, 5000, 'mil', 'mils'),
    unit('ft', 1524, 5, 'foot', 'feet'),
  ],
};

const angle: QuantityKind = {
  noun: 'an angle',
  internal: 'rad',
  bare: 'deg',
  examples: ['30', '30 deg', '0.5 rad'],
  units: [unit('deg', Math.PI, 180, 'degree', 'degrees'), unit('rad', 1, 1, 'radian', 'radians')],
};

const speed: QuantityKind = {
  noun: 'a speed of turning',
  internal: 'rpm',
  bare: 'rpm',
  examples: ['400', '400 rpm'],
  units: [unit('rpm', 1, 1, '1/min', 'rev/min', 'r/min'), unit('rev/s', 60, 1, 'Hz', '1/s')],
};

const velocity: QuantityKind = {
  noun: 'a speed along a line',
  internal: 'm/s',
  examples: ['6.3 m/s', '1240 ft/min'],
  units: [unit('m/s', 1, 1), unit('ft/min', 127, 25_000, 'fpm'), unit('ft/s', 381, 1250, 'fps')],
};

const temperature: QuantityKind = {
  noun: 'a temperature',
  internal: 'C',
  bare: 'C',
  examples: ['160', '160 C', '320 F'],
  units: [
    unit('C', 1, 1, 'degC', 'deg C', 'celsius'),
    { name: 'F', also: ['degF', 'deg F', 'fahrenheit'], num: 5, den: 9, shift: [32, 1] },
    { name: 'K', also: ['kelvin'], num: 1, den: 1, shift: [27315, 100] },
  ],
};

const time: QuantityKind = {
  noun: 'a time',
  internal: 's',
  bare: 'min',
  examples: ['90', '90 min', '2 h', '1 h 30 min'],
  units: [
    unit('s', 1, 1, 'sec', 'second', 'seconds'),
    unit('min', 60, 1, 'minute', 'minutes'),
    unit('h', 3600, 1, 'hr', 'hour', 'hours'),
  ],
};

// Pound-force 0.45359237 kg * 9.80665 m/s2 = 4.4482216152605 N exactly; square inch 645.16 mm2 exactly.
const pressure: QuantityKind = {
  noun: 'a pressure',
  internal: 'Pa',
  examples: ['0.4 MPa', '200 psi', '4 bar'],
  exactCase: true,
  units: [
    unit('Pa', 1, 1),
    unit('kPa', 1000, 1, 'kpa'),
    unit('MPa', 1_000_000, 1, 'mpa', 'N/mm2'),
    unit('bar', 100_000, 1, 'Bar'),
    unit('psi', 44_482_216_152_605, 6_451_600_000, 'PSI', 'lbf/in2'),
  ],
};

const force: QuantityKind = {
  noun: 'a force',
  internal: 'N',
  examples: ['800 N', '2.5 kN', '180 lbf'],
  units: [
    unit('N', 1, 1, 'newton', 'newtons'),
    unit('kN', 1000, 1),
    unit('lbf', 44_482_216_152_605, 10_000_000_000_000),
    unit('kgf', 980_665, 100_000),
  ],
};

const mass: QuantityKind = {
  noun: 'a mass',
  internal: 'kg',
  examples: ['4.2 g', '3 kg', '0.15 oz'],
  units: [
    unit('g', 1, 1000, 'gram', 'grams'),
    unit('kg', 1, 1, 'kilogram', 'kilograms'),
    unit('oz', 45_359_237, 1_600_000_000, 'ounce', 'ounces'),
    unit('lb', 45_359_237, 100_000_000, 'lbs', 'pound', 'pounds'),
  ],
};

const density: QuantityKind = {
  noun: 'a density',
  internal: 'kg/m3',
  examples: ['7.28 g/cm3', '1100 kg/m3'],
  units: [
    unit('kg/m3', 1, 1),
    unit('g/cm3', 1000, 1, 'g/cc', 'g/ml', 'kg/l'),
    unit('lb/in3', 453_592_370_000, 16_387_064),
    unit('lb/ft3', 453_592_370_000, 28_316_846_592),
  ],
};

// Avoirdupois ounce 28.349523125 g times 25.4 mm, exactly.
const unbalance: QuantityKind = {
  noun: 'an unbalance',
  internal: 'g.mm',
  examples: ['1500 g.mm', '2 oz.in'],
  units: [
    unit('g.mm', 1, 1, 'g mm', 'gmm'),
    unit('kg.mm', 1000, 1, 'kg mm'),
    unit('oz.in', 5_760_623_099, 8_000_000, 'oz in', 'ozin'),
  ],
};

const molarEnergy: QuantityKind = {
  noun: 'an energy per mole',
  internal: 'J/mol',
  examples: ['90 kJ/mol', '21.5 kcal/mol'],
  units: [unit('J/mol', 1, 1), unit('kJ/mol', 1000, 1), unit('kcal/mol', 4184, 1)],
};

const diffusivity: QuantityKind = {
  noun: 'a thermal diffusivity',
  internal: 'm2/s',
  examples: ['0.11 mm2/s', '1.1e-7 m2/s'],
  units: [
    unit('m2/s', 1, 1),
    unit('mm2/s', 1, 1_000_000),
    unit('in2/s', 64_516, 100_000_000),
    unit('ft2/h', 9_290_304, 360_000_000_000, 'ft2/hr'),
  ],
};

// One BTU (IT) is 1055.05585262 J; each F of difference is 1/1.8 K.
const btuPerHourF = 1_899_100_534_716;

const conductivity: QuantityKind = {
  noun: 'a thermal conductivity',
  internal: 'W/mK',
  examples: ['0.22 W/mK'],
  units: [
    unit('W/mK', 1, 1, 'W/(m K)', 'W/m/K'),
    unit('BTU/(h ft F)', btuPerHourF, 1_097_280_000_000, 'BTU/h/ft/F', 'BTU/(hr ft F)', 'BTU/hr/ft/F'),
    unit('BTU in/(h ft2 F)', btuPerHourF, 13_167_360_000_000, 'BTU in/h/ft2/F', 'BTU in/(hr ft2 F)'),
  ],
};

const filmCoefficient: QuantityKind = {
  noun: 'a film coefficient',
  internal: 'W/m2K',
  examples: ['20 W/m2K', '3.5 BTU/(h ft2 F)'],
  units: [
    unit('W/m2K', 1, 1, 'W/(m2 K)', 'W/m2/K'),
    unit('BTU/(h ft2 F)', btuPerHourF, 334_450_944_000, 'BTU/h/ft2/F', 'BTU/(hr ft2 F)', 'BTU/hr/ft2/F'),
  ],
};

const specificEnergy: QuantityKind = {
  noun: 'an energy per mass',
  internal: 'J/kg',
  examples: ['59 kJ/kg', '14 cal/g'],
  units: [unit('J/kg', 1, 1), unit('kJ/kg', 1000, 1, 'J/g'), unit('cal/g', 4184, 1)],
};

const heatCapacity: QuantityKind = {
  noun: 'a heat capacity per mass',
  internal: 'J/kgK',
  examples: ['240 J/kgK', '0.24 kJ/kgK'],
  units: [
    unit('J/kgK', 1, 1, 'J/(kg K)', 'J/kg/K'),
    unit('kJ/kgK', 1000, 1, 'kJ/(kg K)', 'kJ/kg/K', 'J/gK', 'J/(g K)'),
    unit('cal/gK', 4184, 1, 'cal/(g K)'),
  ],
};

const stiffness: QuantityKind = {
  noun: 'a stiffness',
  internal: 'N/mm',
  examples: ['2 kN/mm', '11000 lbf/in'],
  units: [
    unit('N/mm', 1, 1, 'kN/m'),
    unit('kN/mm', 1000, 1),
    unit('lbf/in', 44_482_216_152_605, 254_000_000_000_000),
  ],
};

const pricePerMass: QuantityKind = {
  noun: 'a price per mass',
  internal: 'per kg',
  examples: ['32 per kg', '14.50 per lb'],
  units: [
    unit('per kg', 1, 1, '/kg'),
    unit('per g', 1000, 1, '/g'),
    unit('per lb', 100_000_000, 45_359_237, '/lb'),
    unit('per oz', 1_600_000_000, 45_359_237, '/oz'),
  ],
};

const pricePerTime: QuantityKind = {
  noun: 'a price per time',
  internal: 'per h',
  examples: ['30 per h'],
  units: [unit('per h', 1, 1, '/h', 'per hour', 'an hour'), unit('per min', 60, 1, '/min', 'per minute')],
};

const expansion: QuantityKind = {
  noun: 'a thermal expansion',
  internal: '1/K',
  examples: ['6.6e-4 /K'],
  units: [
    unit('/K', 1, 1, '1/K', 'per K', '/C', '1/C', 'per C'),
    unit('/F', 9, 5, '1/F', 'per F', 'in/in/F'),
  ],
};

const share: QuantityKind = {
  noun: 'a share',
  internal: '1',
  bare: '',
  examples: ['1.2 %', '0.012'],
  units: [unit('', 1, 1), unit('%', 1, 100, 'percent')],
};

export const quantityKinds = {
  length,
  angle,
  speed,
  velocity,
  temperature,
  time,
  pressure,
  force,
  mass,
  density,
  unbalance,
  molarEnergy,
  diffusivity,
  conductivity,
  filmCoefficient,
  specificEnergy,
  heatCapacity,
  stiffness,
  pricePerMass,
  pricePerTime,
  expansion,
  share,
} as const satisfies Record<string, QuantityKind>;

export type KindName = keyof typeof quantityKinds;
