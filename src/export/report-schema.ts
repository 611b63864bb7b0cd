import { z } from 'zod';
import {
  catalogue,
  type FigureName,
  type FindingCode,
  figureCatalogue,
  severities,
  units,
} from '../findings/index.ts';

const severity = z.enum(severities);
const unit = z.enum(units);
const place = z.tuple([z.number(), z.number(), z.number()]).describe('x, y, z in mm.');
const measured = z.strictObject({ value: z.number(), unit });
const subject = z.string().describe('Id of a placement, master, solid or plan section, or `mold`.');
const name = z.string();
const codes = Object.keys(catalogue) as FindingCode[];
const figures = Object.keys(figureCatalogue) as FigureName[];

const finding = z.strictObject({
  code: z.enum(codes),
  severity,
  subject,
  place: place.optional().describe('In the mold frame; of mesh findings in the frame of the master.'),
  values: z
    .record(z.string(), z.union([measured, z.string(), z.array(z.string()), z.array(z.number())]))
    .describe(
      'What was found, by name: numbers with their unit, words, lists of names, points in mm. `measured` and `limit` are what was found and what it is held to; `which` tells apart the sentences of one code.',
    ),
  says: z.string().describe("What is wrong, with the numbers, in the plan's own system first."),
  remedy: z.string().describe('What to do.'),
  at: z
    .strictObject({ file: z.string(), line: z.int().positive(), column: z.int().positive() })
    .optional()
    .describe('Where in the plan.'),
  changed: z
    .strictObject({ from: severity, reason: z.string() })
    .optional()
    .describe('Where the plan takes it more or less seriously than is usual: what it was, and why.'),
});

const figure = z.strictObject({
  name: z.enum(figures),
  subject,
  value: z.number(),
  unit,
  source: z.string().describe('Formula or table it rests on.'),
  estimated: z.boolean().describe('Whether a stand-in or a value from memory went into it.'),
  word: z.string().optional().describe("What money is counted in, in the plan's own word."),
  by: z
    .enum(figures)
    .optional()
    .describe('Of the lowest or highest of several figures, which of them it is.'),
  places: z.array(place).optional(),
});

const axis = z.strictObject({ label: z.string(), unit, values: z.array(z.number()) });

const series = z.strictObject({
  name,
  subject,
  x: axis,
  y: axis,
  limit: z
    .strictObject({ value: z.number(), says: z.string() })
    .optional()
    .describe("What y is held to, in y's unit."),
});

const field = z.strictObject({
  name,
  subject,
  unit,
  count: z.int().nonnegative().describe('How many vertices have a value.'),
  least: z.number().optional(),
  greatest: z.number().optional(),
  mean: z.number().optional(),
});

const master = z.strictObject({
  id: z.string(),
  length: z.number().describe('As it lies, mm; so are width and height.'),
  width: z.number(),
  height: z.number(),
  volume: z.number().describe('mm3.'),
  massG: z
    .strictObject({ value: z.number(), estimated: z.boolean() })
    .optional()
    .describe('Of one casting, g, where the plan says what is poured.'),
  estimated: z.boolean(),
});

/** The report as JSON, as `reportJson` writes it. */
export const reportSchema = z.strictObject({
  schema: z.literal(2),
  title: z.string(),
  units: z.enum(['metric', 'inch']).describe('What the sentences give first, as the plan does.'),
  findings: z.array(finding),
  figures: z.array(figure),
  series: z.array(series),
  fields: z.array(field),
  masters: z
    .array(master)
    .optional()
    .describe('Each master at its final size, that of the casting; `check --json` gives it.'),
});

/** JSON Schema of the report, generated from the one definition above. */
export const reportJsonSchema = (): object => ({
  ...z.toJSONSchema(reportSchema, { reused: 'inline', target: 'draft-2020-12' }),
  title: 'discwright report',
});
