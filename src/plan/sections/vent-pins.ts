import { z } from 'zod';
import { accepts, complain, length, word } from './fields.ts';
import { names } from './parting.ts';

const along = { from: -1000, to: 1000 };
const point = (of: string, x: string, y: string) =>
  z
    .strictObject({ x: length(x, along), y: length(y, along) })
    .describe(`${of} ${accepts('length')}`)
    .optional();

/** Where a pin stands: at a place of the disc, or of the cavities of placements, in the frame of their masters. */
type PinPlace =
  | { readonly at: { readonly x: number; readonly y: number } }
  | {
      readonly placements: readonly string[];
      readonly place: { readonly x: number; readonly y: number };
    };

export const ventPins = z
  .array(
    z
      .strictObject({
        diameter: length('Diameter of the hole.', { over: 0, to: 20 }),
        half: word('The half it goes through.', ['lower', 'upper']),
        at: point(
          'A place of the disc.',
          'From the axis toward the index mark.',
          'From the axis, at right angles to x, counter-clockwise.',
        ),
        placements: names(
          'Placements whose cavities get one: names, or `all`; the name of a ring means all of it.',
        ).optional(),
        place: point(
          'A place of their master, from its middle; left out, its middle.',
          "Along the master's own +x, which points outward at turn 0.",
          "Along the master's own +y.",
        ),
      })
      .transform(({ at, placements, place, ...rest }, context) => {
        const extra = placements ? 'placements' : place ? 'place' : undefined;
        if (at && extra) complain(context, 'plan.choose-one', { which: 'pin' }, [extra]);
        const where: PinPlace | undefined = at
          ? { at }
          : placements && { placements, place: place ?? { x: 0, y: 0 } };
        if (where) return { ...rest, where };
        complain(context, 'plan.missing', { which: 'pin' });
        return z.NEVER;
      }),
  )
  .max(200)
  .describe(
    'Vent pins: round holes through a half, that let air out of the middle of a face. Common practice, no published source.',
  );
