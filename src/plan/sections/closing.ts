import { z } from 'zod';
import { angle, complain, count, length, line, quantity, renamed, size, word } from './fields.ts';

const across = { over: 0, to: 3000 };
const mostOfAKind = 60;
const force = (description: string) => quantity('force', description, { over: 0, to: 5e6 });

type Context = z.core.$RefinementCtx;

/** Complains where two fields say one thing. */
const chooseOne = (
  context: Context,
  rule: unknown,
  fixed: unknown,
  which: 'bolt circle' | 'bolt spacing',
  name: string,
): void => {
  if (rule !== undefined && fixed !== undefined) complain(context, 'plan.choose-one', { which }, [name]);
};

const bolts = z
  .strictObject({
    size: line('Thread, such as `M10` or `3/8`.', 20),
    grade: z
      .union([z.number().positive(), line('', 20)])
      .transform(String)
      .optional()
      .describe('Strength class or grade, such as `8.8` or `grade 2`.'),
    count: count('How many.', 1, mostOfAKind).optional(),
    spacing: length(
      'Greatest distance from one to the next along their circle, instead of `count`: as few as keep it.',
      { over: 0, to: 3000 },
    ).optional(),
    circle: length('Diameter of the circle they stand on.', across).optional(),
    outsideRim: length(
      'How far outside the rim of the disc their middles stand, instead of `circle`: they follow when the disc changes.',
      { over: 0, to: 500 },
    ).optional(),
    start: angle('Angle of the first; the others follow evenly.').optional(),
    tension: force('Force each is tightened to.').optional(),
    cure: word(
      'Whether they stay in under the clamps through the cure, where the load may come to them, or are taken out once the clamps are on.',
      ['left in', 'taken out'],
    ).optional(),
  })
  .superRefine(({ circle, outsideRim, count, spacing }, context) => {
    chooseOne(context, outsideRim, circle, 'bolt circle', 'outsideRim');
    chooseOne(context, spacing, count, 'bolt spacing', 'spacing');
    if (count === undefined && spacing === undefined) {
      complain(context, 'plan.missing', { which: 'bolt count' });
    } else if (spacing !== undefined && circle === undefined && outsideRim === undefined) {
      complain(context, 'plan.missing', { which: 'bolt circle' }, ['spacing']);
    }
  })
  .transform((value) => renamed(value, { start: 'startRad' }))
  .describe('Bolts that draw the can shut.');

/** As many clamps as hold the force that opens the can, with the reserve the check asks for. */
export const asNeeded = 'as needed';

const clampCount = z
  .union([z.number(), z.string()])
  .transform((written, context): number | typeof asNeeded => {
    if (written === asNeeded) return written;
    if (typeof written === 'number' && Number.isInteger(written) && written >= 1 && written <= mostOfAKind)
      return written;
    const values = { which: 'clamps', given: String(written).slice(0, 60) } as const;
    if (typeof written === 'number')
      complain(context, 'plan.out-of-range', { ...values, bound: mostOfAKind });
    else complain(context, 'plan.wrong-word', { ...values, limit: mostOfAKind });
    return z.NEVER;
  })
  .describe(
    `How many: a whole number from 1 to ${mostOfAKind}, or \`${asNeeded}\`: an even number that holds 1.25 times the pressure on the face of the can, at least 4, each taken at its rated \`force\`.`,
  );

export const closing = z
  .strictObject({
    bolts: bolts.optional(),
    clamps: z
      .strictObject({
        count: clampCount,
        force: force('Force each is rated for; how far it is tightened is another thing.').optional(),
        circle: length('Diameter of the circle on which they press on the lids.', across).optional(),
        screw: line('Thread they are tightened by, such as `M12` or `1/2`.', 20).optional(),
      })
      .optional()
      .describe('Clamps that carry the load of the cure.'),
    press: z
      .strictObject({
        force: force('Force the press is rated for.').optional(),
        cure: word('Whether the can stays under the closed press until it has cooled, or is taken out.', [
          'in the press',
          'out',
        ]).optional(),
      })
      .optional()
      .describe('A platen press the can is closed in. It holds the can only as long as the can is under it.'),
    lid: z
      .strictObject({
        material: line('What the lids are made of.', 60).optional(),
        thickness: size('Thickness of the lids.', { over: 0, to: 200 }).optional(),
        hole: length(
          'Diameter of the hole in the upper lid that the sprue form stands through.',
          across,
        ).optional(),
        yield: quantity('pressure', 'Yield strength of the lids at the temperature of the cure.', {
          over: 0,
          to: 3e9,
        }).optional(),
      })
      .transform((value) => renamed(value, { yield: 'yieldPa' }))
      .optional()
      .describe('The lids the bolts and clamps press on.'),
    pressure: quantity('pressure', 'Molding pressure on the rubber.', { over: 0, to: 50e6 }).optional(),
  })
  .superRefine(({ clamps, pressure }, context) => {
    if (clamps?.count !== asNeeded) return;
    const name = pressure === undefined ? '`pressure` under `closing`' : '`force` under `clamps`';
    if (pressure !== undefined && clamps.force !== undefined) return;
    complain(context, 'plan.missing', { which: 'clamp force', name }, ['clamps', 'count']);
  })
  .transform((value) => renamed(value, { pressure: 'pressurePa' }))
  .describe('What holds the can shut while it cures.');
