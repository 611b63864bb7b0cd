import { z } from 'zod';
import {
  count,
  id,
  length,
  line,
  namesOfSchema,
  quantity,
  renamed,
  share,
  type TextKind,
  word,
} from '../plan/index.ts';
import { outcomes } from './outcome.ts';

const temperature = (description: string) => quantity('temperature', description, { from: -50, to: 1500 });
const onDisc = { from: -1000, to: 1000 };

/** Where on a casting a fault is: a word such as `tip`, or a point of the disc. */
const where = z
  .union([
    line('`tip`, `base`, the name of a place in the `entry` of the master, or any word of your own.', 60),
    z
      .strictObject({
        x: length('From the axis along +x of the disc.', onDisc),
        y: length('From the axis along +y of the disc.', onDisc),
      })
      .describe('A point of the disc, seen from above.'),
  ])
  .describe('Where on the casting: a word, or a point of the disc `{ x: 60, y: -12 }`.');

const came = word('What the casting came out as.', outcomes);

const seen = z
  .strictObject({
    came,
    where: where.optional(),
    missing: share('Share of the casting that is missing.', { over: 0, to: 1 }).optional(),
  })
  .describe('A fault, and where it is.');

const cavity = z
  .union([
    came.transform((word) => [{ came: word }]),
    seen.transform((one) => [one]),
    z
      .array(z.union([came.transform((word) => ({ came: word })), seen]))
      .min(1)
      .max(outcomes.length),
  ])
  .describe(
    `One of ${outcomes.map((word) => `\`${word}\``).join(', ')}; or \`{ came: short, where: tip, missing: 20 % }\`; or a list of these.`,
  );

const size = (description: string) => length(description, { over: 0, to: 100 });

/** A gate or vent as it was cut at the pour. */
const cut = z
  .strictObject({
    kind: word('What it is.', ['gate', 'vent']),
    of: z.array(id('A placement.')).min(1).max(300).describe('The placements that have it.'),
    at: line('Where it opens into the cavity.', 60).optional(),
    way: line('How it runs.', 200).optional(),
    width: size('Its width.').optional(),
    depth: size('Its depth.').optional(),
  })
  .describe('A gate or vent as it was cut at the pour.');

const pour = z
  .strictObject({
    pour: count('Number of the pour.', 1, 9999),
    date: line('When, as you write it.', 60).optional(),
    metal: temperature('Temperature of the metal when it was poured.').optional(),
    mold: temperature('Temperature of the halves before the pour.').optional(),
    speed: quantity('speed', 'Speed of turning.', { over: 0, to: 10_000 }).optional(),
    shot: quantity('mass', 'Metal that was poured.', { over: 0, to: 100 }).optional(),
    talc: line('What the halves were dusted with, and how much.', 60).optional(),
    cavities: z
      .record(id('Id of a placement.'), cavity)
      .optional()
      .describe('What the casting of each placement came out as.'),
    others: word('What the placements that are not named came out as; left out, nothing is known of them.', [
      'good',
    ]).optional(),
    changed: line('What was changed since the pour before, in your own words.', 300).optional(),
    note: line('Anything else.', 300).optional(),
    cut: z
      .array(cut)
      .max(1000)
      .optional()
      .describe(
        'Gates and vents as the plan had them at the pour, written where they are other than at the pour before.',
      ),
  })
  .transform((value) => renamed(value, { metal: 'metalC', mold: 'moldC', speed: 'speedRpm', shot: 'shotKg' }))
  .describe('One pour.');

const logSchema = z
  .strictObject({
    about: line('Where the log comes from, such as an invented example.', 300).optional(),
    pours: z.array(pour).max(2000).describe('Every pour, the first first.'),
  })
  .describe('Trials of a mold, kept beside its plan.');

/** The JSON Schema of a trial log as a person writes it. */
export const trialLogJsonSchema = (): z.core.JSONSchema.JSONSchema => ({
  ...z.toJSONSchema(logSchema, { io: 'input', reused: 'inline', target: 'draft-2020-12' }),
  title: 'discwright trials',
});

/** The one definition of a trial log: its checks, its type and the JSON Schema for editors all come from here. */
export const trialLog: TextKind<z.output<typeof logSchema>> = {
  schema: logSchema,
  names: namesOfSchema(trialLogJsonSchema),
  called: 'a trial log',
};

export type TrialLog = z.output<typeof logSchema>;
export type Pour = TrialLog['pours'][number];

/** A gate or vent as it was cut. */
export type Cut = NonNullable<Pour['cut']>[number];
