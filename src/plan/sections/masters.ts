import { z } from 'zod';
import { entryPlace } from './channels.ts';
import { angle, complain, idPattern, length, line, quantity, renamed, share, word } from './fields.ts';

const lie = z
  .strictObject({
    turnX: angle('Turn about the x axis of the master file, first.').optional(),
    turnY: angle('Turn about the y axis, second.').optional(),
    turnZ: angle('Turn about the z axis, third.').optional(),
  })
  .transform((value) => renamed(value, { turnX: 'xRad', turnY: 'yRad', turnZ: 'zRad' }))
  .describe('How the master is turned before it is placed: about x, then y, then z.');

const repair = z
  .strictObject({
    edge: length(
      'Edge length, at its final size, at which a master is meshed anew when nothing milder closes it.',
      {
        from: 0.01,
        to: 10,
      },
    ).optional(),
    closeHoles: length('Holes up to this size across, at its final size, are closed.', {
      from: 0,
      to: 1000,
    }).optional(),
  })
  .describe('How far the repair of a faulty mesh may go.');

const fields = {
  file: line('Mesh file, as a path from the folder of the plan: STL, OBJ or 3MF.', 400).optional(),
  unit: word('Unit of the mesh file, where the file does not say it.', [
    'mm',
    'cm',
    'm',
    'in',
    'micron',
    'ft',
  ]).optional(),
  scale: share(
    'How large the master is to be made, as a share of the size in the file, such as `50 %` or 0.5.',
    {
      from: 0.0001,
      to: 10000,
    },
  ).optional(),
  lie: lie.optional(),
  allowance: word(
    'Whether shrink is still to be added to the master (add) or it was made larger already (included).',
    ['add', 'included'],
  ).optional(),
  mass: quantity('mass', 'Mass of one casting, where it is known.', { over: 0, to: 20 }).optional(),
  material: line(
    'What the master itself is made of, such as pewter, brass, PLA, resin, clay: it must stand the cure.',
    60,
  ).optional(),
  repair: repair.optional(),
  outline: line(
    'Outline of a stand-in seen from above: SVG or DXF file, as a path from the folder of the plan.',
    400,
  ).optional(),
  width: length('Width of a stand-in without an outline, along its own y.', {
    over: 0,
    to: 1000,
  }).optional(),
  length: length(
    'Length of a stand-in without an outline, along its own x; of a mesh, in place of `scale`, the longer side it is made to have, seen from above once it is tipped (turnX, turnY).',
    { over: 0, to: 1000 },
  ).optional(),
  height: length('Height a mesh is made to have once it is tipped (turnX, turnY), in place of `scale`.', {
    over: 0,
    to: 1000,
  }).optional(),
  entry: z
    .record(
      z.string().refine((name) => idPattern.test(name)),
      entryPlace,
    )
    .describe('Places of its outline by the names that gates and vents give as their `entry`.')
    .optional(),
  above: length('Height of a stand-in above the parting plane.', { from: 0, to: 200 }).optional(),
  below: length('Depth of a stand-in below the parting plane.', { from: 0, to: 200 }).optional(),
};

const meshOnly = ['unit', 'scale', 'lie', 'repair'] as const;
const standInOnly = ['outline', 'width', 'above', 'below'] as const;
/** What gives a mesh its size. */
const sizes = ['scale', 'length', 'height'] as const;

type Written = z.output<z.ZodObject<typeof fields>>;

/** One master: a mesh file, or a stand-in of an outline (or width and length) with heights. */
const master = z
  .strictObject(fields)
  .transform((written, context) => (written.file === undefined ? standIn : mesh)(written, context))
  .describe(
    'A master: either `file`, or a stand-in with `above`, `below` and either `outline` or `width` and `length`.',
  );

function mesh(written: Written, context: z.core.$RefinementCtx) {
  const { file, unit, scale, length, height, lie, allowance, repair, mass, material, entry } = written;
  for (const key of standInOnly) {
    if (written[key] === undefined) continue;
    complain(context, 'plan.choose-one', { which: 'stand-in', name: key }, [key]);
  }
  const given = sizes.filter((key) => written[key] !== undefined);
  if (given.length > 1)
    complain(context, 'plan.choose-one', { which: 'size', names: given.map(quoted) }, [given[1]]);
  return {
    kind: 'mesh' as const,
    file: file ?? '',
    unit,
    scale,
    length,
    height,
    lie,
    allowance,
    repair,
    massKg: mass,
    material,
    entry,
  };
}

const quoted = (key: string): string => `\`${key}\``;

function standIn(written: Written, context: z.core.$RefinementCtx) {
  const { outline, width, length, height, above, below, allowance, mass, material, entry } = written;
  const needs = (which: 'master' | 'stand-in heights' | 'stand-in shape'): typeof z.NEVER => {
    complain(context, 'plan.missing', { which });
    return z.NEVER;
  };
  if ([...standInOnly, 'length' as const, 'height' as const].every((key) => written[key] === undefined)) {
    return needs('master');
  }
  for (const key of meshOnly) {
    if (written[key] === undefined) continue;
    complain(context, 'plan.choose-one', { which: 'mesh', name: key }, [key]);
  }
  if (outline !== undefined && (width !== undefined || length !== undefined)) {
    complain(context, 'plan.choose-one', { which: 'outline' }, ['outline']);
  }
  if (height !== undefined) {
    complain(context, 'plan.choose-one', { which: 'stand-in height' }, ['height']);
    return z.NEVER;
  }
  if (above === undefined || below === undefined) {
    return needs('stand-in heights');
  }
  if (above + below <= 0) {
    complain(context, 'plan.out-of-range', { which: 'no height' });
  }
  const rest = { kind: 'stand-in' as const, above, below, allowance, massKg: mass, material, entry };
  if (outline !== undefined) return { ...rest, shape: { outline } };
  if (width === undefined || length === undefined) {
    return needs('stand-in shape');
  }
  return { ...rest, shape: { width, length } };
}

export const masters = z
  .record(
    // Not as a pattern: editors differ in whether a pattern of the JSON Schema may name classes of letters.
    z.string().refine((name) => idPattern.test(name)),
    master,
  )
  .describe('The masters by the names you give them: letters, digits and dashes.');
