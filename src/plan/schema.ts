import { z } from 'zod';
import { arrange } from './sections/arrange.ts';
import { alloy, can, cure, machine, rubber, spin } from './sections/bench.ts';
import { gates, vents } from './sections/channels.ts';
import { closing } from './sections/closing.ts';
import { disc, process } from './sections/disc.ts';
import { line, word, wordInAnyCase } from './sections/fields.ts';
import { fixture, limits, severity, shrink } from './sections/making.ts';
import { masters } from './sections/masters.ts';
import { materials } from './sections/materials.ts';
import { order, prices } from './sections/order.ts';
import { notches, parting, supports, tabs } from './sections/parting.ts';
import { placements } from './sections/placements.ts';
import { pouring } from './sections/pouring.ts';
import { registration } from './sections/registration.ts';
import { runners } from './sections/runners.ts';
import { sectors } from './sections/sectors.ts';
import { sprue } from './sections/sprue.ts';
import { ventPins } from './sections/vent-pins.ts';

/** The one definition of a plan: its checks, its type and the JSON Schema for editors all come from here. */
export const planSchema = z
  .strictObject({
    title: line('Title of the mold; names the folder that a build writes.').optional(),
    revision: z
      .union([z.int(), line('', 40)])
      .transform(String)
      .optional()
      .describe(
        'Revision of the plan; text that looks like a broken number, such as "1.10", goes in quotes.',
      ),
    units: word(
      'The system findings, papers and the page show first, the other beside it. Left out, the one the diameter of the disc is written in.',
      ['metric', 'inch'],
    ).optional(),
    paper: wordInAnyCase(
      'Paper the shop sheet is printed on. Left out: Letter for a plan in inches, else A4.',
      ['A4', 'Letter'],
    ).optional(),
    process,
    disc,
    sectors: sectors.optional(),
    can: can.optional(),
    closing: closing.optional(),
    machine: machine.optional(),
    rubber: rubber.optional(),
    alloy: alloy.optional(),
    shrink: shrink.optional(),
    sprue: sprue.optional(),
    masters: masters.optional(),
    placements: placements.optional(),
    arrange: arrange.optional(),
    registration: registration.optional(),
    supports: supports.optional(),
    tabs: tabs.optional(),
    notches: notches.optional(),
    runners: runners.optional(),
    gates: gates.optional(),
    vents: vents.optional(),
    ventPins: ventPins.optional(),
    parting: parting.optional(),
    spin: spin.optional(),
    pouring: pouring.optional(),
    order: order.optional(),
    prices: prices.optional(),
    cure: cure.optional(),
    fixture: fixture.optional(),
    materials: materials.optional(),
    limits: limits.optional(),
    severity: severity.optional(),
  })
  .describe('A plan of a two-part disc mold for discwright.');

/** What the schema makes of a plan, before its items know their places in the text. */
export type PlanValue = z.output<typeof planSchema>;

/** The JSON Schema of a plan as a person writes it. */
export const planJsonSchema = (): z.core.JSONSchema.JSONSchema => ({
  ...z.toJSONSchema(planSchema, { io: 'input', reused: 'inline', target: 'draft-2020-12' }),
  title: 'discwright plan',
});
