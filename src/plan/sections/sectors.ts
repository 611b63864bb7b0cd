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
      const names = ['`count`', '`spacing`'];
      complain(context, 'plan.choose-one', { which: 'how many', names }, ['spacing']);
    } else if (fixed && radius !== undefined) {
      complain(context, 'plan.choose-one', { which: 'sector radius' }, ['radius']);
    } else if (!fixed && (spacing === undefined || radius === undefined)) {
      complain(context, 'plan.missing', { which: 'sector count' });
    }
  })
  .describe(
    'Divides the disc into like sectors by which rings (`perSector`) and angles (`near`) follow when the disc changes: all of them keep in step.',
  );
