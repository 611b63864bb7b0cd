import { z } from 'zod';
import {
  accepts,
  type Bounds,
  complain,
  count,
  isShare,
  length,
  line,
  quantity,
  readInto,
  renamed,
  word,
} from './fields.ts';

const size = { over: 0, to: 3000 };
/** What is heated or molten. Only a can may come in from the frost. */
const temperatures = { from: 0, to: 1500 };
const temperature = (description: string) => quantity('temperature', description, temperatures);

/** A mass in kg, or a share of what the description says. */
const massOrShare = (what: string, orShare: string, mass: Bounds, most: Bounds) =>
  z
    .union([z.number(), z.string()])
    .transform((written, context): { readonly kg: number } | { readonly share: number } => {
      if (isShare(written)) return { share: readInto(context, written, 'share', most) ?? z.NEVER };
      return { kg: readInto(context, written, 'mass', mass) ?? z.NEVER };
    })
    .describe(`${what} A mass, or ${orShare}. ${accepts('mass')}`);

type MassOrShare = z.output<ReturnType<typeof massOrShare>>;

/** Under one name or the other, so that a name carries its unit. */
const namedMass = <K extends string, S extends string>(
  given: MassOrShare | undefined,
  kg: K,
  share: S,
): { readonly [name in K | S]?: number } =>
  (given && { ['kg' in given ? kg : share]: 'kg' in given ? given.kg : given.share }) as {
    readonly [name in K | S]?: number;
  };

export const can = z
  .strictObject({
    diameter: length('Inner diameter of the can.', size).optional(),
    gap: length(
      'How much wider than the disc the can is, instead of `diameter`: a can that follows when the disc changes.',
      { from: 0, to: 200 },
    ).optional(),
    depth: length('Inner depth of the can.', size).optional(),
    wall: length('Thickness of the can wall.', { over: 0, to: 100 }).optional(),
    material: line('What the wall of the can is made of.', 60).optional(),
    floor: length('Thickness of the can floor.', { over: 0, to: 100 }).optional(),
    lid: length('Thickness of the can lid.', { over: 0, to: 100 }).optional(),
    spacer: length('Thickness of loose plates laid in with the disc.', { from: 0, to: 200 }).optional(),
    grooves: z
      .strictObject({
        count: count('How many.', 1, 1000),
        width: length('Width of each.', { over: 0, to: 100 }),
        depth: length('Depth of each.', { over: 0, to: 50 }),
        length: length('Length of each, from the disc out.', { over: 0, to: 500 }),
      })
      .optional()
      .describe('The grooves through which rubber that is too much flows out of the can.'),
    spew: word('Whether rubber that is too much can flow out of the closed can, through grooves or a gap.', [
      'open',
      'none',
    ]).optional(),
  })
  .superRefine(({ diameter, gap }, context) => {
    if (diameter === undefined || gap === undefined) return;
    complain(context, 'plan.choose-one', { which: 'can gap' }, ['gap']);
  })
  .describe('The can (ring, frame) the halves are pressed and cured in.');

export const machine = z
  .strictObject({
    maxSpeed: quantity('speed', 'Highest speed of the casting machine.', { over: 0, to: 10000 }).optional(),
    direction: word('Direction of turning seen from above.', ['clockwise', 'counter-clockwise']).optional(),
    closingForce: quantity('force', 'Force that holds the halves together while spinning.', {
      over: 0,
      to: 5e6,
    }).optional(),
    stiffness: quantity(
      'stiffness',
      'How much more force holds the halves for each length they open: of a spring its rate, of a frame how it yields; measure it.',
      { over: 0, to: 1e7 },
    ).optional(),
    plateMass: quantity('mass', 'Mass of the turning plates without the disc.', {
      from: 0,
      to: 1000,
    }).optional(),
    plateUnbalance: quantity('unbalance', 'How far the turning plates are out of balance by themselves.', {
      from: 0,
      to: 1e6,
    }).optional(),
    centering: length('How far off the axis the mold may come to sit between the plates.', {
      from: 0,
      to: 50,
    }).optional(),
    plateDiameter: length('Diameter of the pressing plate.', size).optional(),
    maxUnbalance: quantity('unbalance', 'Unbalance the machine stands, from its maker.', {
      over: 0,
      to: 1e6,
    }).optional(),
  })
  .transform((value) =>
    renamed(value, {
      maxSpeed: 'maxSpeedRpm',
      closingForce: 'closingForceN',
      stiffness: 'stiffnessNMm',
      plateMass: 'plateMassKg',
      plateUnbalance: 'plateUnbalanceGmm',
      maxUnbalance: 'maxUnbalanceGmm',
    }),
  )
  .describe('The casting machine.');

export const rubber = z
  .strictObject({
    compound: line('Name of the compound, as on its sheet.').optional(),
    density: quantity('density', 'Density.', { over: 0, to: 5000 }).optional(),
    t90: quantity('time', 'Time to 90 % cure at the reference temperature, from the maker.', {
      over: 0,
      to: 86_400,
    }).optional(),
    referenceTemperature: temperature('Temperature at which t90 was measured.').optional(),
    activationEnergy: quantity('molarEnergy', 'Activation energy of the cure.', {
      over: 0,
      to: 500_000,
    }).optional(),
    diffusivity: quantity('diffusivity', 'Thermal diffusivity.', { over: 0, to: 1e-4 }).optional(),
    conductivity: quantity('conductivity', 'Thermal conductivity; an oven needs it.', {
      over: 0,
      to: 20,
    }).optional(),
    hardness: z
      .number()
      .min(10)
      .max(95)
      .optional()
      .describe('Hardness of the cured rubber, Shore A, 10 to 95.'),
    modulus: quantity(
      'pressure',
      "Young's modulus of the cured rubber at small strain, instead of its hardness.",
      {
        over: 0,
        to: 1e9,
      },
    ).optional(),
    mooney: z
      .number()
      .min(1)
      .max(200)
      .optional()
      .describe('Mooney viscosity of the raw compound, ML 1+4, from the maker, 1 to 200.'),
    scorch: quantity('time', 'Time at the temperature of the cure until it flows no more, from the maker.', {
      over: 0,
      to: 86_400,
    }).optional(),
    expansion: quantity('expansion', 'Volume expansion with temperature.', { over: 0, to: 0.01 }).optional(),
    laidIn: massOrShare(
      'Raw rubber laid into the can, both halves, after all cutting away.',
      'a share such as `95 %` of the room that masters, bosses, sprue form, tabs and build-ups leave in the can',
      { over: 0, to: 1000 },
      { over: 0, to: 1.2 },
    ).optional(),
    overcure: quantity(
      'time',
      'Time at the reference temperature past which the compound softens or hardens again, from the maker.',
      { over: 0, to: 604_800 },
    ).optional(),
    cureFrom: temperature('Lowest curing temperature, from the maker.').optional(),
    cureTo: temperature('Highest curing temperature, from the maker.').optional(),
    maxTemperature: temperature('Highest metal temperature the rubber stands, from the maker.').optional(),
  })
  .transform(({ laidIn, ...value }) => ({
    ...namedMass(laidIn, 'laidInKg', 'laidInShare'),
    ...renamed(value, {
      density: 'densityKgM3',
      t90: 't90S',
      referenceTemperature: 'referenceTemperatureC',
      activationEnergy: 'activationEnergyJMol',
      diffusivity: 'diffusivityM2S',
      conductivity: 'conductivityWMK',
      expansion: 'expansionPerK',
      modulus: 'modulusPa',
      scorch: 'scorchS',
      overcure: 'overcureS',
      cureFrom: 'cureFromC',
      cureTo: 'cureToC',
      maxTemperature: 'maxTemperatureC',
    }),
  }))
  .describe('The rubber compound (or silicone, or resin) of the halves.');

export const alloy = z
  .strictObject({
    name: line('Name of the alloy.').optional(),
    density: quantity('density', 'Density, solid: castings are weighed by it.', {
      over: 0,
      to: 25_000,
    }).optional(),
    liquidDensity: quantity(
      'density',
      'Density when molten, as it is poured: shot, pressure and opening force go by it. Left out: by the composition, where the table of alloys has one of that name.',
      { over: 0, to: 25_000 },
    ).optional(),
    solidus: temperature('Where it begins to melt.').optional(),
    liquidus: temperature('Where it is wholly molten.').optional(),
    pour: temperature('Pouring temperature.').optional(),
    latentHeat: quantity('specificEnergy', 'Heat it gives up while it sets.', {
      over: 0,
      to: 1e6,
    }).optional(),
    heatMolten: quantity('heatCapacity', 'Heat capacity, molten.', { over: 0, to: 10_000 }).optional(),
    heatSolid: quantity('heatCapacity', 'Heat capacity, solid.', { over: 0, to: 10_000 }).optional(),
    conductivity: quantity('conductivity', 'Thermal conductivity, solid.', { over: 0, to: 1000 }).optional(),
  })
  .transform((value) =>
    renamed(value, {
      density: 'densityKgM3',
      liquidDensity: 'liquidKgM3',
      solidus: 'solidusC',
      liquidus: 'liquidusC',
      pour: 'pourC',
      latentHeat: 'latentHeatJKg',
      heatMolten: 'heatMoltenJKgK',
      heatSolid: 'heatSolidJKgK',
      conductivity: 'conductivityWMK',
    }),
  )
  .describe('The metal that is cast.');

export const spin = z
  .strictObject({
    speed: quantity('speed', 'Speed while pouring.', { over: 0, to: 10000 }).optional(),
    rimSpeed: quantity(
      'velocity',
      'Speed of the rim while pouring, instead of `speed`: a larger disc turns more slowly. Turned to whole rpm.',
      { over: 0, to: 200 },
    ).optional(),
    shot: massOrShare(
      'Mass of metal poured at once.',
      'a share such as `50 %` of the way from the least shot that fills the mold to the largest that does not climb out',
      { over: 0, to: 100 },
      { from: 0, to: 1 },
    ).optional(),
    detail: length('Radius of the finest rounded detail that must fill.', { over: 0, to: 5 }).optional(),
    grade: z
      .string()
      .regex(/^G\d{1,4}(\.\d{1,2})?$/)
      .optional()
      .describe('Balance grade of ISO 21940-11 the disc is held to, such as `G6.3`.'),
  })
  .superRefine(({ speed, rimSpeed }, context) => {
    if (speed === undefined || rimSpeed === undefined) return;
    complain(context, 'plan.choose-one', { which: 'rim speed' }, ['rimSpeed']);
  })
  .transform(({ shot, ...value }) => ({
    ...namedMass(shot, 'shotKg', 'shotShare'),
    ...renamed(value, { speed: 'speedRpm', rimSpeed: 'rimSpeedMS' }),
  }))
  .describe('How the mold is spun.');

export const cure = z
  .strictObject({
    temperature: temperature('Temperature of platens or oven.').optional(),
    time: quantity('time', 'Time at that temperature.', { over: 0, to: 604_800 }).optional(),
    heating: word('What heats the can.', ['platens', 'oven']).optional(),
    start: quantity('temperature', 'Temperature of the can when it goes in.', {
      from: -50,
      to: 1500,
    }).optional(),
    cooling: word('Whether the disc cools in the can or is taken out hot.', ['in the can', 'out']).optional(),
    film: quantity('filmCoefficient', 'Film coefficient between the air of the oven and the can.', {
      over: 0,
      to: 10_000,
    }).optional(),
    contact: quantity(
      'filmCoefficient',
      'Contact conductance between platen and lid. It falls with scale, warp and dirt, from some 1000 to 200 (common practice, no published source): measure how far the lid lags.',
      { over: 0, to: 100_000 },
    ).optional(),
    coolingConstant: quantity(
      'time',
      'How fast platens or oven cool with the can in them: time until 37 % of their lead over the start is left; 0 where the can is set into air.',
      { from: 0, to: 604_800 },
    ).optional(),
  })
  .transform((value) =>
    renamed(value, {
      temperature: 'temperatureC',
      time: 'timeS',
      start: 'startC',
      film: 'filmWM2K',
      contact: 'contactWM2K',
      coolingConstant: 'coolingConstantS',
    }),
  )
  .describe('How the rubber is cured.');
