import { z } from 'zod';
import { toRadians } from '../../geometry/index.ts';
import { angle, id, length, line, renamed, size, word } from './fields.ts';
import { placeAngle } from './placements.ts';

const clearance = length('Gap between a loose build-up and its master; left out, that of the fixtures.', {
  from: 0,
  to: 10,
});

/** One name or a list of them. */
export const names = (description: string) =>
  z
    .union([id(description), z.array(id(description)).min(1).max(500)])
    .transform((value) => (typeof value === 'string' ? [value] : value))
    .describe(description);

export const supports = z
  .union([
    z.literal('auto'),
    z
      .array(
        z.strictObject({
          placements: names('Placements that get a build-up; the name of a ring means all of it.'),
          clearance: clearance.optional(),
          material: line(
            'What they are made of, where that is not the material of the fixtures: `rubber` where they are cut by their drawings.',
            60,
          ).optional(),
        }),
      )
      .max(500),
  ])
  .describe('Part-support build-ups: `auto` where a master has nothing under it, or a list.');

export const tabs = z
  .array(
    z
      .strictObject({
        id: id('Name of the tab; without it, tabs are numbered.').optional(),
        angle: placeAngle('Where on the rim; left out, the middle of the widest free arc.').optional(),
        width: size('Width along the rim.', { over: 0, to: 500 }).optional(),
        length: size('Length inward.', { over: 0, to: 200 }).optional(),
        height: length('Height, half of it in each half.', { over: 0, to: 50 }).optional(),
        inset: length('Distance of its outer corners from the rim, so that the can closes.', {
          from: 0,
          to: 100,
        }).optional(),
      })
      .transform((value) => renamed(value, { angle: 'angleRad' })),
  )
  .max(24)
  .describe('Separating tabs in the parting line at the rim, where the cured halves are pried apart.');

export const notches = z
  .array(
    z
      .strictObject({
        id: id('Name of the notch; without it, notches are numbered.').optional(),
        angle: placeAngle('Where on the rim; left out, the middle of the widest free arc.').optional(),
        width: size('Width along the rim.', { over: 0, to: 200 }).optional(),
        depth: size('Depth inward.', { over: 0, to: 100 }).optional(),
      })
      .transform((value) => renamed(value, { angle: 'angleRad' })),
  )
  .max(24)
  .describe('Witness notches across both halves at the rim.');

export const parting = z
  .strictObject({
    surface: word('flat: the plane z = 0. follow: rises and falls to the widest contour of each master.', [
      'flat',
      'follow',
    ]).optional(),
    slope: angle('Steepest slope of the parting surface.', { over: 0, to: toRadians(75) }).optional(),
    limit: z
      .strictObject({
        up: length('How far it may rise above the parting plane.', { from: 0, to: 200 }).optional(),
        down: length('How far it may fall below the parting plane.', { from: 0, to: 200 }).optional(),
      })
      .optional()
      .describe('How far the parting surface may leave the plane.'),
    cell: length('Grid step the parting surface is computed on.', { from: 0.02, to: 5 }).optional(),
  })
  .transform((value) => renamed(value, { slope: 'slopeRad' }))
  .describe('The surface along which the halves part.');
