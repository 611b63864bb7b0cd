import { z } from 'zod';
import { toRadians } from '../../geometry/index.ts';
import { entryPlace } from './channels.ts';
import { angle, complain, count, id, length, renamed, word } from './fields.ts';
import { sink } from './placements.ts';

const open = ['as many as fit', 'fill the gaps'] as const;

const pieces = z
  .strictObject({
    count: z
      .union([count('So many.', 1, 200), z.enum(open)])
      .describe(
        'How many of this master lie on the disc, those that stay counted in: a number, which has to lie; `as many as fit`; or `fill the gaps`, as many as find room when all else lies.',
      ),
    most: count('At most so many, where as many as fit are laid.', 1, 200).optional(),
    worth: z
      .number()
      .min(0.001)
      .max(1e6)
      .optional()
      .describe('What one is worth against one of the others, where not all find room; left out, 1.'),
    gate: z
      .union([id('A place in the `entry` of the master.').transform((named) => ({ named })), entryPlace])
      .optional()
      .describe(
        'Where its gate opens into it: the name of a place of the master, or a place of its outline. Left out, wherever the way to the well is best.',
      ),
    place: word('Where it should rather lie.', ['inner', 'outer']).optional(),
    sink: sink.optional(),
  })
  .transform((value, context) => {
    if (typeof value.count === 'number' && value.most !== undefined && value.most < value.count)
      complain(context, 'plan.choose-one', { which: 'pieces' }, ['most']);
    return value;
  })
  .describe('The pieces of one master.');

const gates = z
  .strictObject({
    width: length('Width of the gates where `gates` says none for a master; left out, the usual.', {
      over: 0,
      to: 50,
    }).optional(),
    gap: length('Rubber left between two gates, least where they come out of the well.', {
      from: 0,
      to: 50,
    }).optional(),
    lean: angle('How far a straight gate may lean from the radius.', {
      from: 0,
      to: toRadians(60),
    }).optional(),
  })
  .transform((value) => renamed(value, { lean: 'leanRad' }))
  .describe('The gates, each straight from its piece to the well.');

export const arrange = z
  .strictObject({
    pieces: z
      .record(id('Name of a master.'), pieces)
      .describe('What lies on the disc, under the name of each master.'),
    wall: length('Least wall between two pieces seen from above; left out, that of the `limits`.', {
      over: 0,
      to: 100,
    }).optional(),
    ample: z
      .union([length('A wall.', { over: 0, to: 200 }), z.literal('no end')])
      .optional()
      .describe(
        'A wall that is wide enough: past it order counts for more. Left out, one and a half times the least; `no end` makes walls as wide as they go.',
      ),
    gates: gates.optional(),
    symmetry: z
      .union([count('So many like parts of the disc.', 1, 24), z.literal('as the counts allow')])
      .optional()
      .describe(
        'How many like parts the disc has, which keeps it in balance by itself; what is left over is laid singly. Left out, as the counts allow.',
      ),
    effort: word('How long is looked; left out, usual.', ['little', 'usual', 'much']).optional(),
    seed: count(
      'Another seed gives another layout, the same always the same; left out, 1.',
      1,
      1_000_000,
    ).optional(),
  })
  .describe(
    'What `discwright arrange` lays on the disc. It is written as ordinary placements; nothing is looked for in a build.',
  );
