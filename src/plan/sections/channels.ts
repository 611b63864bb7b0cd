import { z } from 'zod';
import { toRadians } from '../../geometry/index.ts';
import { accepts, angle, complain, id, length, renamed, word } from './fields.ts';
import { names } from './parting.ts';
import { type RadiusSpec, radius } from './placements.ts';

/** Lean of a trapezoid's sides, so that rubber and castings leave them. Common practice, no published source. */
export const channelDraftRad = toRadians(20);

/** Across a channel: half an ellipse, a trapezoid whose sides lean by the draft, or as a knife cuts it. */
type Section =
  | { readonly kind: 'half-round' }
  | { readonly kind: 'V' }
  | { readonly kind: 'trapezoid'; readonly draftRad: number };

/** A place of a master's outline: in the direction of an angle from its middle, or nearest to a point of its own frame. */
export type EntryPlace = { readonly angleRad: number } | { readonly x: number; readonly y: number };

/** Where on the outline of a cavity a channel opens into it. */
export type ChannelEntry =
  | { readonly end: 'inner' | 'outer' | 'left' | 'right' }
  | { readonly named: string }
  | EntryPlace;

const along = { from: -1000, to: 1000 };

export const entryPlace = z
  .strictObject({
    angle: angle(
      'Direction seen from the middle of the master, counter-clockwise from its own +x.',
    ).optional(),
    x: length(
      "Along the master's own +x, which points outward at turn 0, from its middle.",
      along,
    ).optional(),
    y: length("Along the master's own +y, from its middle.", along).optional(),
  })
  .transform(({ angle, x, y }, context): EntryPlace => {
    if (angle !== undefined && (x ?? y) !== undefined)
      complain(context, 'plan.choose-one', { which: 'entry' }, ['angle']);
    if (angle !== undefined) return { angleRad: angle };
    if (x !== undefined && y !== undefined) return { x, y };
    complain(context, 'plan.missing', { which: 'entry place' });
    return z.NEVER;
  })
  .describe(
    `A place of the outline: \`{ angle: 90 }\` from the middle of the master, or the nearest to \`{ x: 4, y: -2 }\` in its own frame. ${accepts('angle')}`,
  );

const ends = ['inner', 'outer', 'left', 'right'] as const;

const entry = z
  .union([
    id('An end, a side, or the name of a place in the `entry` of the master.').transform(
      (name): ChannelEntry => {
        const end = ends.find((word) => word === name);
        return end ? { end } : { named: name };
      },
    ),
    entryPlace,
  ])
  .describe(
    'Where it opens into the cavity: the `inner` or `outer` end, the side `left` or `right` seen from the axis, the name of a place of the master, or a place of the outline. Gates enter at the inner end, vents begin at the outer, where it is left out.',
  );

/** How a channel runs from the well to its cavity, or from there to the rim. */
export type ChannelPath =
  | 'straight'
  | 'routed'
  | { readonly through: readonly { readonly radius: RadiusSpec; readonly angleRad: number }[] }
  | { readonly arcRad: number }
  | { readonly slantRad: number };

/** Way points, their angles counted from the direction of what they lead to; and how far an arc turns. */
export const through = (zero: string) =>
  z
    .array(
      z
        .strictObject({ radius, angle: angle(`Counter-clockwise seen from above, zero ${zero}.`) })
        .transform((value) => renamed(value, { angle: 'angleRad' })),
    )
    .min(1)
    .max(50)
    .describe('Way points, from the axis outward.')
    .optional();
export const arc = angle('How much it turns on its way outward, counter-clockwise seen from above.', {
  from: toRadians(-270),
  to: toRadians(270),
}).optional();

const path = z
  .union([
    word('Along the radius, or round whatever stands in the way.', ['straight', 'routed']),
    z
      .strictObject({
        through: through('in the direction of the placement'),
        arc,
        slant: angle(
          'How far a straight way leans from the radius at the cavity, against the turning: outward it falls behind. Where `machine.direction` is left out, the disc is taken to turn counter-clockwise.',
          { from: toRadians(-80), to: toRadians(80) },
        ).optional(),
      })
      .transform(({ through, arc, slant }, context): ChannelPath => {
        const given = Object.entries({ through, arc, slant }).filter(([, one]) => one !== undefined);
        if (given.length > 1) complain(context, 'plan.choose-one', { which: 'path' }, [given[1][0]]);
        if (slant !== undefined) return { slantRad: slant };
        if (through) return { through };
        if (arc !== undefined) return { arcRad: arc };
        complain(context, 'plan.missing', { which: 'path' });
        return z.NEVER;
      }),
  ])
  .describe(
    'Its way: `straight` along the radius, `routed` round cavities, bosses, tabs, notches and other channels at the limit for walls, `{ through: [{ radius: 40, angle: 10 }] }`, one arc, `{ arc: 30 }`, or straight and leaning against the turning, `{ slant: 20 }`. Straight where it is left out.',
  );

export const section = z
  .union([
    word('Its shape across.', ['half-round', 'trapezoid', 'V']).transform(
      (kind): Section => (kind === 'trapezoid' ? { kind, draftRad: channelDraftRad } : { kind }),
    ),
    z
      .strictObject({
        trapezoid: angle('Lean of its sides from upright.', { from: 0, to: toRadians(60) }),
      })
      .transform(({ trapezoid }): Section => ({ kind: 'trapezoid', draftRad: trapezoid })),
  ])
  .describe(
    `Its shape across: \`half-round\`, \`V\` as a knife cuts it, \`trapezoid\`, or \`{ trapezoid: 15 }\` with the lean of its sides. Gates and runners are half-round, vents trapezoids, where it is left out. ${accepts('angle')}`,
  );

const channel = (what: string, width: string) =>
  z.strictObject({
    placements: names(
      `Placements that get a ${what}: names, or \`all\`; the name of a ring means all of it.`,
    ),
    width: length(width, { over: 0, to: 100 }).optional(),
    depth: length('Depth below the parting surface.', { over: 0, to: 50 }).optional(),
    endWidth: length('Width at its end; left out, as wide as it begins.', { over: 0, to: 100 }).optional(),
    endDepth: length('Depth at its end; left out, as deep as it begins.', { over: 0, to: 50 }).optional(),
    section: section.optional(),
    entry: entry.optional(),
    path: path.optional(),
    half: word('The half it is cut into.', ['lower', 'upper']).optional(),
  });

const channels = <T extends z.ZodObject>(one: T, course: string) =>
  z
    .union([z.literal('straight'), z.array(one).max(500)])
    .describe(`${course} \`straight\` gives every placement one; a list says which, how wide and how deep.`);

const gate = channel('gate', 'Width of the gate.').extend({
  from: id(
    'What it leads out of instead of the well: a runner by its name, or the gate of another placement.',
  ).optional(),
  slow: z
    .strictObject({
      pocket: length('How far the blind pocket runs on past the turn.', { over: 0, to: 100 }),
    })
    .optional()
    .describe(
      'A slowing bend: at its last way point before the cavity the gate turns, and a blind pocket runs straight on, so that metal strikes there and comes to a small part with less speed. It takes way points, `path: { through: [...] }`. Common practice, no published source.',
    ),
  land: z
    .strictObject({
      length: length('How long it is, up to the cavity.', { over: 0, to: 100 }),
      width: length('Its width; left out, as wide as the gate ends.', { over: 0, to: 100 }).optional(),
      depth: length('Its depth; left out, as deep as the gate ends.', { over: 0, to: 50 }).optional(),
    })
    .optional()
    .describe('The short last piece, narrowed, where the casting is snapped off.'),
});
export const gates = channels(gate, 'Gates, from the well to the cavity.');
/** Where a vent ends that does not go to the rim. */
type VentEnd = { readonly vent: string } | { readonly pocket: number };

const vent = channel('vent', 'Width of the vent.').extend({
  to: z
    .union([
      id('The placement into whose vent it leads.').transform((vent): VentEnd => ({ vent })),
      z.strictObject({
        pocket: length('How far past the outline of the cavity the blind pocket reaches.', {
          over: 0,
          to: 200,
        }),
      }),
    ])
    .optional()
    .describe(
      `Where it ends, if not at the rim: the name of a placement, in its vent, or \`{ pocket: 6 }\`, a blind pocket straight out of the outline or at its last way point. ${accepts('length')}`,
    ),
  joins: z
    .boolean()
    .optional()
    .describe(
      'Whether it may open into another vent that may too, so that one way out serves several cavities.',
    ),
});
export const vents = channels(vent, 'Vents, from the cavity to the rim.');
