import { z } from 'zod';
import { complain, length, line, word } from './fields.ts';

export const process = word(
  'How the halves come to be; decides which solids and checks apply. rubber: raw rubber pressed and cured round the masters. rigid: printed or machined test halves. poured: pattern plates that silicone or resin is poured on.',
  ['rubber', 'rigid', 'poured'],
);

const half = { over: 0, to: 200 };

export const disc = z
  .strictObject({
    diameter: length('Diameter of the disc.', { over: 0, to: 2000 }),
    thickness: length('Thickness of each half, where both are alike.', half).optional(),
    lower: length('Thickness of the lower half; goes together with `upper`.', half).optional(),
    upper: length('Thickness of the upper half; goes together with `lower`.', half).optional(),
    rimChamfer: length('Chamfer round the outer edge of each outer face.', { from: 0, to: 50 }).optional(),
    label: line(
      'Text engraved on the outer faces, with half, diameter and revision; without it, the title.',
      40,
    ).optional(),
  })
  .superRefine(({ thickness, lower, upper }, context) => {
    if (thickness !== undefined && (lower !== undefined || upper !== undefined)) {
      complain(context, 'plan.choose-one', { which: 'thickness' }, ['thickness']);
    } else if ((lower === undefined) !== (upper === undefined)) {
      const [given, missing] = lower === undefined ? ['upper', 'lower'] : ['lower', 'upper'];
      complain(context, 'plan.missing', { which: 'other half', name: given, other: missing }, [given]);
    }
  })
  .describe('The disc: two halves that lie on each other.');
