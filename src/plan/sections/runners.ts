import { z } from 'zod';
import { arc, section, through } from './channels.ts';
import { accepts, angle, complain, count, id, length, renamed, word } from './fields.ts';
import { type RadiusSpec, radius } from './placements.ts';

/** Where a runner goes: round the axis, with straight ways to it from the well, or out to a place of the disc. */
type RunnerCourse =
  | { readonly ring: { readonly radius: RadiusSpec; readonly spokes: number; readonly startRad: number } }
  | { readonly to: RunnerPlace; readonly path: RunnerPath };

interface RunnerPlace {
  readonly radius: RadiusSpec;
  readonly angleRad: number;
}
type RunnerPath = 'straight' | { readonly through: readonly RunnerPlace[] } | { readonly arcRad: number };

const ring = z
  .strictObject({
    radius,
    spokes: count(
      'How many straight ways lead to it from the well, evenly spaced; left out, one.',
      1,
      24,
    ).optional(),
    start: angle('Angle of the first of them; left out, at the index mark.').optional(),
  })
  .transform(({ radius, spokes = 1, start = 0 }) => ({ radius, spokes, startRad: start }))
  .describe('A ring about the axis, at the radius of its middle line.');

const path = z
  .union([
    word('Along the radius.', ['straight']),
    z
      .strictObject({ through: through('in the direction of its end'), arc })
      .transform(({ through, arc }, context): RunnerPath => {
        if (through && arc !== undefined) complain(context, 'plan.choose-one', { which: 'path' }, ['arc']);
        if (through) return { through };
        if (arc !== undefined) return { arcRad: arc };
        complain(context, 'plan.missing', { which: 'runner path' });
        return z.NEVER;
      }),
  ])
  .describe(
    'Its way from the well to its end: `straight`, `{ through: [{ radius: 30, angle: 10 }] }`, or one arc, `{ arc: 30 }`. Straight where it is left out.',
  );

export const runners = z
  .array(
    z
      .strictObject({
        id: id('Name of the runner, which gates say in `from`.'),
        ring: ring.optional(),
        to: z
          .strictObject({
            radius,
            angle: angle('Counter-clockwise seen from above, zero at the index mark.'),
          })
          .transform((value) => renamed(value, { angle: 'angleRad' }))
          .describe('Where it ends, out from the well.')
          .optional(),
        path: path.optional(),
        width: length('Width of the runner.', { over: 0, to: 100 }).optional(),
        depth: length('Depth below the parting surface.', { over: 0, to: 50 }).optional(),
        endWidth: length('Width at its end; left out, as wide as it begins.', {
          over: 0,
          to: 100,
        }).optional(),
        endDepth: length('Depth at its end; left out, as deep as it begins.', { over: 0, to: 50 }).optional(),
        section: section.optional(),
        half: word('The half it is cut into.', ['lower', 'upper']).optional(),
      })
      .transform(({ ring, to, path, ...rest }, context) => {
        const about = { which: 'runner' } as const;
        const extra = Object.entries({ to, path, endWidth: rest.endWidth, endDepth: rest.endDepth }).find(
          ([, given]) => given !== undefined,
        );
        // A ring has no end, and no other way than round.
        if (ring && extra) complain(context, 'plan.choose-one', about, [extra[0]]);
        const course: RunnerCourse | undefined = ring ? { ring } : to && { to, path: path ?? 'straight' };
        if (course) return { ...rest, course };
        complain(context, 'plan.missing', about);
        return z.NEVER;
      }),
  )
  .max(24)
  .describe(
    `Runners: channels from the well that feed several gates, which name them in \`from\`. ${accepts('length')}`,
  );
