import { z } from 'zod';
import { complain, count, length } from './fields.ts';
import { radius } from './placements.ts';

/** Into how many like sectors the disc is divided: so many, or as many as have `spacing` mm along a circle. */
export const sectors = z
  .strictObject({
    count: count('How many.', 1, 60).optional(),
    spacing: length('Least length of a sector along the circle of `radius`: as many as find room.', {
      over: 0,
      to: 3000,
    }).optional(),
    radius: radius.optional(),
  })
  .superRefine(({ count, spacing, radius }, context) => {
    const fixed = count !== undefined;
    if (fixed && spacing !== undefined) {
      const says = '`count` and `spacing` both say how many; give one of them.';
      complain(context, 'plan.choose-one', says, ['spacing']);
    } else if (fixed && radius !== undefined) {
      const says = '`radius` is where `spacing` is measured, so it cannot stand beside `count`.';
      complain(context, 'plan.choose-one', says, ['radius']);
    } else if (!fixed && (spacing === undefined || radius === undefined)) {
      const says =
        'how many sectors is not said: give `count`, or `spacing` and the `radius` it is measured at.';
      complain(context, 'plan.missing', says);
    }
  })
  .describe(
    'Divides the disc into like sectors by which rings (`perSector`) and angles (`near`) follow when the disc changes: all of them keep in step.',
  );
