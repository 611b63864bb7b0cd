import { z } from 'zod';
import { complain, line, quantity, renamed, share, word } from './fields.ts';

const material = z
  .strictObject({
    kind: word('A resin that light or heat hardens, another plastic, or plaster.', [
      'resin',
      'plastic',
      'plaster',
    ]),
    heatLimit: quantity(
      'temperature',
      'Deflection temperature of a resin or plastic after its full cure; of plaster the highest temperature it stands once dry.',
      { from: 0, to: 1500 },
    ),
    load: quantity(
      'pressure',
      'Load the deflection temperature was measured under (ISO 75-2: 1.8 MPa or 0.45 MPa); not of plaster.',
      { over: 0, to: 100e6 },
    ).optional(),
    strength: quantity('pressure', 'Tensile strength.', { over: 0, to: 5e9 }),
    density: quantity('density', 'Density.', { over: 0, to: 25_000 }),
    expansion: quantity('expansion', 'Expansion in length with temperature.', {
      over: 0,
      to: 0.001,
    }).optional(),
    conductivity: quantity('conductivity', 'Thermal conductivity.', { over: 0, to: 1000 }).optional(),
    heatCapacity: quantity('heatCapacity', 'Heat capacity.', { over: 0, to: 10_000 }).optional(),
    poisson: share("Poisson's ratio; left out, 0.5, the greatest there is and the strictest.", {
      from: 0,
      to: 0.5,
    }).optional(),
    source: line('Where the numbers are from: the data sheet, with its issue or date.', 200),
  })
  .superRefine(({ kind, load }, context) => {
    if (kind !== 'plaster' && load === undefined) complain(context, 'plan.missing', { which: 'load' });
  })
  .transform((value) =>
    renamed(value, {
      heatLimit: 'heatLimitC',
      load: 'loadPa',
      strength: 'strengthPa',
      density: 'densityKgM3',
      expansion: 'expansionPerK',
      conductivity: 'conductivityWMK',
      heatCapacity: 'heatJKgK',
    }),
  )
  .describe('A material by its data sheet.');

export const materials = z
  .record(
    line('Name of the material, as it is written wherever the plan says what something is of.', 60),
    material,
  )
  .describe(
    'Own materials, from their data sheets: each under its name, by which `fixture.material`, `material` of masters and of build-ups name it.',
  );
