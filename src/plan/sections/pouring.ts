import { z } from 'zod';
import { quantity, renamed } from './fields.ts';

const temperature = (description: string) => quantity('temperature', description, { from: -50, to: 1500 });

export const pouring = z
  .strictObject({
    fill: quantity('time', 'Time from the first metal in the mold until all of it is in.', {
      over: 0,
      to: 600,
    }).optional(),
    openAfter: quantity('time', 'Time after the pour at which the mold is opened.', {
      over: 0,
      to: 86_400,
    }).optional(),
    handling: quantity(
      'time',
      'What a pour takes besides: opening, stripping, dusting, closing, bringing up to speed.',
      { over: 0, to: 86_400 },
    ).optional(),
    halves: temperature('Temperature of the halves at the first pour.').optional(),
    coolest: temperature(
      'Coolest the halves may be, as the shop knows it: colder, castings stay short.',
    ).optional(),
    warmest: temperature(
      'Hottest the halves may be before a pour, by the maker of the rubber or as the shop knows it.',
    ).optional(),
    air: temperature('Temperature of the air and plates that cool the halves.').optional(),
    film: quantity(
      'filmCoefficient',
      'How well their outer faces give heat to it: measure how fast a hot mold cools.',
      { over: 0, to: 10_000 },
    ).optional(),
    contact: quantity(
      'filmCoefficient',
      'Heat transfer between metal and halves; left out, they are taken to touch perfectly.',
      { over: 0, to: 1e6 },
    ).optional(),
  })
  .transform((value) =>
    renamed(value, {
      fill: 'fillS',
      openAfter: 'openAfterS',
      handling: 'handlingS',
      halves: 'halvesC',
      coolest: 'coolestC',
      warmest: 'warmestC',
      air: 'airC',
      film: 'filmWM2K',
      contact: 'contactWM2K',
    }),
  )
  .describe('How one pour follows another.');
