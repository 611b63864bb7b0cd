import { type About, type Finding, finding } from '../src/findings/index.ts';

/** A cover of 1 mm where 3 mm are wanted; `needed` says how thick the half should be. */
export const thinCover = (
  subject: string,
  { needed = 9, ...about }: Partial<About> & { needed?: number } = {},
): Finding =>
  finding('cover.thin', {
    subject,
    ...about,
    values: {
      which: 'thing',
      measured: 1,
      limit: 3,
      half: 'lower',
      process: 'rigid',
      needed,
    },
  });

/** A stop: something reaches 2 mm beyond the rim. */
export const openRim = (subject: string): Finding =>
  finding('walls.rim-open', { subject, values: { measured: -2, limit: 6, beyond: 2 } });
