import { z } from 'zod';
import { accepts, angle, complain, count, id, isShare, length, readInto, renamed, share } from './fields.ts';

/** Where along the radius: a length from the axis, a share of the disc radius, or a distance from the rim. */
export type RadiusSpec =
  | { readonly length: number }
  | { readonly share: number }
  | { readonly fromRim: number };

/** How deep below the parting plane: a length, a share of the master's height, or its widest contour. */
export type Sink = { readonly depth: number } | { readonly share: number } | 'silhouette';

const reach = { from: 0, to: 1000 };

export const radius = z
  .union([
    z.number(),
    z.string(),
    z.strictObject({ fromRim: length('Distance inward from the rim of the disc.', reach) }),
  ])
  .transform((written, context): RadiusSpec => {
    if (typeof written === 'object') return { fromRim: written.fromRim };
    if (isShare(written)) {
      return { share: readInto(context, written, 'share', { from: 0, to: 1 }) ?? z.NEVER };
    }
    return { length: readInto(context, written, 'length', reach) ?? z.NEVER };
  })
  .describe(
    `Distance from the disc axis: a length, a share of the disc radius such as \`60 %\`, or \`{ fromRim: 20 }\`. ${accepts('length')}`,
  );

/** An angle in rad, or the nearest of so many evenly spaced directions of each sector. */
export type PlaceAngle = number | { readonly nearRad: number; readonly perSector: number };

export const placeAngle = (description: string) =>
  z
    .union([
      angle(description),
      z
        .strictObject({
          near: angle('The direction wanted.'),
          perSector: count(
            'How many evenly spaced directions a sector has, the first at the index mark.',
            1,
            100,
          ),
        })
        .transform((value) => renamed(value, { near: 'nearRad' })),
    ])
    .describe(
      `${description} Or \`{ near: 120, perSector: 4 }\`: the nearest of so many evenly spaced directions of each sector, by which it follows when the number of \`sectors\` changes. ${accepts('angle')}`,
    );

export const position = z
  .strictObject({ radius, angle: placeAngle('Counter-clockwise seen from above, zero at the index mark.') })
  .transform((value) => renamed(value, { angle: 'angleRad' }))
  .describe('A place on the disc.');

export type Position = z.output<typeof position>;

export const sink = z
  .union([z.number(), z.string()])
  .transform((written, context): Sink => {
    if (written === 'silhouette') return 'silhouette';
    if (isShare(written)) {
      return { share: readInto(context, written, 'share', { from: 0, to: 1 }) ?? z.NEVER };
    }
    if (typeof written === 'string' && !/\d/.test(written)) {
      complain(context, 'plan.wrong-word', { which: 'sink', given: written.slice(0, 60) });
      return z.NEVER;
    }
    return { depth: readInto(context, written, 'length', { from: 0, to: 200 }) ?? z.NEVER };
  })
  .describe(
    `How much of the master lies below the parting plane: a length, a share of its height such as \`50 %\` (at most 100 %), or \`silhouette\` for its widest contour. ${accepts('length')}`,
  );

const turn = angle(
  'Turn of the master about its own vertical, counter-clockwise from above; at 0 its +x points outward.',
);

export const ring = z
  .strictObject({
    count: count('How many, evenly spaced.', 1, 500).optional(),
    spacing: length('Least distance from one to the next along the ring: as many as find room.', {
      over: 0,
      to: 3000,
    }).optional(),
    perSector: count('How many in each sector of the disc, evenly spaced.', 1, 100).optional(),
    radius,
    start: angle('Angle of the first.').optional(),
    offset: share('How much further the first stands, as a share of the angle from one to the next.', {
      from: 0,
      to: 1,
    }).optional(),
  })
  .transform(({ count, spacing, perSector, ...rest }, context) => {
    const placed = renamed(rest, { start: 'startRad' });
    const ways = Object.entries({ count, spacing, perSector }).filter(([, given]) => given !== undefined);
    if (ways.length > 1) {
      const names = ways.map(([name]) => `\`${name}\``);
      complain(context, 'plan.choose-one', { which: 'how many', names }, [ways[1][0]]);
      return z.NEVER;
    }
    if (count !== undefined) return { ...placed, count };
    if (spacing !== undefined) return { ...placed, spacing };
    if (perSector !== undefined) return { ...placed, perSector };
    complain(context, 'plan.missing', { which: 'ring count' });
    return z.NEVER;
  })
  .describe('A ring of evenly spaced places: so many, as many as find room, or so many in each sector.');

export const leastDisc = length('On a disc of a smaller diameter than this it is left out.', {
  over: 0,
  to: 2000,
});

const each = z
  .array(
    z
      .strictObject({
        radius,
        angle: angle('Counter-clockwise seen from above, zero at the index mark.'),
        turn: turn.optional(),
      })
      .transform((value) => renamed(value, { angle: 'angleRad', turn: 'turnRad' })),
  )
  .min(1)
  .max(500)
  .describe('A list of places, each with its own `turn` if wanted.');

/** Evenly spaced places: so many, as many as have `spacing` mm along the ring from one to the next, or by sectors. */
export type Ring = z.output<typeof ring>;

const placement = z
  .strictObject({
    id: id('Name of the placement; without it, it is named after its master.').optional(),
    master: id('Name of the master placed.'),
    leastDisc: leastDisc.optional(),
    at: position.optional(),
    ring: ring.optional(),
    each: each.optional(),
    turn: turn.optional(),
    sink: sink.optional(),
    arranged: z
      .literal(true)
      .optional()
      .describe('Laid by `discwright arrange`: its next run lays it anew, unless it is `locked`.'),
    locked: z.literal(true).optional().describe('Stays where it is when all is arranged again.'),
  })
  .transform(({ id, master, leastDisc, at, ring, each, turn, sink, arranged, locked }, context) => {
    const rest = {
      ...{ id, master, leastDisc, turnRad: turn, sink },
      ...(arranged && { arranged }),
      ...(locked && { locked }),
    };
    const given = (['at', 'ring', 'each'] as const).filter((key) => ({ at, ring, each })[key] !== undefined);
    if (given.length > 1) {
      const names = given.map((key) => `\`${key}\``);
      complain(context, 'plan.choose-one', { which: 'place', names }, [given[1]]);
    }
    if (at) return { ...rest, where: { position: at } };
    if (ring) return { ...rest, where: { ring } };
    if (each) return { ...rest, where: { each } };
    complain(context, 'plan.missing', { which: 'placement place' });
    return z.NEVER;
  })
  .describe('A master placed once (`at`), in a `ring`, or at `each` of a list of places.');

export const placements = z.array(placement).max(500).describe('What lies where on the disc.');
