import { z } from 'zod';
import { count, line, quantity, renamed, share } from './fields.ts';

const most = 1_000_000;

export const order = z
  .strictObject({
    pieces: z
      .record(line('Id of a master.', 60), count('Good castings wanted of this master.', 1, most))
      .describe('How many castings are wanted, under the id of each master.'),
    misruns: share('Share of all castings that come out bad and are melted again; left out, none.', {
      from: 0,
      to: 0.95,
    }).optional(),
    loss: share('Share of the metal that is lost as dross each time it is melted; left out, none.', {
      from: 0,
      to: 0.5,
    }).optional(),
  })
  .describe('The order that is cast with this mold.');

export const prices = z
  .strictObject({
    in: line('What prices are counted in, in your own word.', 20),
    metal: quantity('pricePerMass', 'Price of the metal.', { from: 0, to: 1e6 }).optional(),
    rubber: quantity('pricePerMass', 'Price of the rubber of the halves.', { from: 0, to: 1e6 }).optional(),
    work: quantity('pricePerTime', 'Price of the time at the bench and the machine.', {
      from: 0,
      to: 1e6,
    }).optional(),
    other: z
      .number()
      .min(0)
      .max(1e9)
      .optional()
      .describe('Price of all else the mold takes: fixtures, masters, wear.'),
    moldTime: quantity('time', 'Time at the bench until the mold is ready.', { from: 0, to: 1e7 }).optional(),
    run: count('Castings over which the mold is paid for; left out, those of the order.', 1, most).optional(),
  })
  .transform((value) =>
    renamed(value, {
      metal: 'metalPerKg',
      rubber: 'rubberPerKg',
      work: 'workPerHour',
      moldTime: 'moldTimeS',
    }),
  )
  .describe('Prices, from which the cost of a casting follows.');
