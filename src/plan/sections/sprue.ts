import { z } from 'zod';
import { toRadians } from '../../geometry/index.ts';
import { angle, length, line, renamed, size, word } from './fields.ts';

const across = { over: 0, to: 300 };

const well = z
  .strictObject({
    diameter: size('Diameter of the well at the parting plane.', across).optional(),
    depth: size('Depth of the well below the parting plane.', { over: 0, to: 100 }).optional(),
  })
  .describe('The hollow in the lower half under the pouring hole, from which the gates lead.');

const dome = z
  .strictObject({
    diameter: size('Diameter of the dome where it stands on the floor of the well.', across).optional(),
    height: size('Height of the dome over the floor of the well.', { from: 0, to: 100 }).optional(),
  })
  .describe('The dome in the middle of the well that turns the stream outward.');

const puller = z
  .strictObject({
    screw: line('Thread of the screw it is pulled with, such as `M6`, `M8x1`, `1/4-20`.', 20),
    hole: word('tapped: drilled to nominal diameter less pitch. insert: a pocket for a heat-set insert.', [
      'tapped',
      'insert',
    ]).optional(),
    depth: length('Depth of the hole; without it, twice the nominal diameter, or what the insert needs.', {
      over: 0,
      to: 200,
    }).optional(),
  })
  .describe('A hole in the top of the sprue form and plug for the screw that pulls them.');

export const sprue = z
  .strictObject({
    hole: size('Diameter of the pouring hole at the parting plane.', across).optional(),
    draft: angle('Draft of the shaft and well: how far their walls lean from the axis.', {
      from: 0,
      to: toRadians(45),
    }).optional(),
    well: well.optional(),
    dome: dome.optional(),
    fillet: length('Radius of the rounding between shaft, well and dome.', { from: 0, to: 50 }).optional(),
    grip: length('How far the sprue form and plug stand out of the upper half, to be gripped.', {
      from: 0,
      to: 200,
    }).optional(),
    puller: puller.optional(),
    flats: length('Width across two flats on the grip, for a wrench.', { over: 0, to: 200 }).optional(),
    vent: length('Depth of a flat along the shaft by which air can follow as the form is pulled.', {
      over: 0,
      to: 5,
    }).optional(),
    pieces: word('one: a single piece. two: parted at the parting plane, shaft on a spigot of the well.', [
      'one',
      'two',
    ]).optional(),
  })
  .transform((value) => renamed(value, { draft: 'draftRad' }))
  .describe('The center sprue form, its recess in both halves, and the plug that keeps the hole open.');
