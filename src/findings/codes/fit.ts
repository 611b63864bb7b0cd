import { didYouMean } from './did-you-mean.ts';
import { codes } from './entry.ts';
import { notChecked, notSaid } from './not-said.ts';
import { wallSays } from './wall.ts';

const playOfCan = 'disc 1 to 2 mm smaller than the can: starting limit from memory';

const gap = { measured: 'mm', limit: 'mm' } as const;

/** Disc, sprue form and bolts against the can. */
export const fitCodes = codes({
  'fit.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the fit in the can is found from; that part is not checked.',
    says: {
      can: `The fit of the disc in the can is ${notSaid}`,
      bolts: `Whether bosses and tabs are clear of the bolts is ${notSaid}`,
    },
  },
  'fit.can-narrow': {
    severity: 'stop',
    means: 'The disc is wider than the can it is to be pressed in.',
    values: { ...gap, beyond: 'mm' },
    says: 'The disc is {beyond} wider than the can.',
    formula: 'diameter of the can less that of the disc; under 0',
    source: 'geometry',
    remedy: 'Take a wider can or a smaller disc.',
  },
  'fit.can-tight': {
    severity: 'warn',
    means: 'The disc is so near the width of the can that raw sheets jam while they are laid in.',
    values: gap,
    says: 'The can is {measured} wider than the disc; {limit} is wanted.',
    formula: 'diameter of the can less that of the disc; under 1 mm',
    source: playOfCan,
    remedy: 'Take a can 1 to 2 mm wider than the disc.',
  },
  'fit.can-wide': {
    severity: 'warn',
    means:
      'The disc has so much room in the can that rubber flows out sideways, and bosses and masters with it.',
    values: gap,
    says: 'The can is {measured} wider than the disc; at most {limit} is wanted.',
    formula: 'diameter of the can less that of the disc; over 3 mm',
    source: `${playOfCan}, with 1 mm to spare`,
    remedy: 'Take a can 1 to 2 mm wider than the disc, or line it.',
  },
  'fit.can-shallow': {
    severity: 'stop',
    means: 'The two halves are thicker than the can is deep, by more than the lids can press together.',
    values: { ...gap, beyond: 'mm' },
    says: 'Both halves stand {beyond} over the depth of the can.',
    formula: 'depth of the can less spacers and both halves; under -2 mm',
    source: 'our own choice of 2 mm; what must flow out is the pack check',
    remedy: 'Take a deeper can, thinner halves, or less of a spacer.',
  },
  'fit.can-deep': {
    severity: 'warn',
    means: 'The halves do not fill the depth of the can, so that the lids do not press on them.',
    values: gap,
    says: 'Both halves leave {measured} of the depth of the can empty.',
    formula: 'depth of the can less spacers and both halves; over 0.5 mm',
    source: 'our own choice of 0.5 mm',
    remedy: 'Lay in spacer plates that make up the difference, or take thicker halves.',
  },
  'fit.sprue-draft': {
    severity: 'warn',
    means: 'The sprue form has so little draft that it sticks in the hole of the upper half.',
    values: { measured: 'deg', limit: 'deg' },
    says: 'The sprue form has {measured} of draft, where {limit} is wanted.',
    formula: 'angle between the wall of the shaft and the axis; under 1 degree',
    source: 'common practice, no published source',
    remedy: 'Give the sprue form 2 to 5 degrees of draft.',
  },
  'fit.sprue-closed': {
    severity: 'stop',
    means: 'With its draft the pouring hole closes before it reaches the outer face of the upper half.',
    values: { ...gap, draft: 'deg', 'meant?': 'names' },
    says: 'With {draft} of draft nothing of the pouring hole is left at the outer face.',
    formula: 'radius at the parting plane less thickness of the upper half times tan of the draft; at most 0',
    source: 'geometry',
    remedy: `Take less draft, a wider hole, or a thinner upper half.${didYouMean}`,
  },
  'fit.sprue-lid': {
    severity: 'note',
    means:
      'The sprue form stands out of the upper half: the lid (or a spacer) needs a hole for it in the cure.',
    values: { measured: 'mm', hole: 'mm', most: 'mm' },
    says: 'The sprue form stands {measured} out of the upper half: the lid needs a hole of at least {hole} and at most {most}.',
    formula: 'length of the sprue form beyond the outer face; over 0',
    source: 'geometry',
    remedy:
      'Bore the lid and write `hole` under `lid`, lay a spacer with a hole on the upper half, or set `grip` to 0.',
  },
  'fit.lid-hole': {
    severity: 'stop',
    means:
      'The hole in the lid does not fit the sprue form: too narrow, it does not pass over it and the can does not close; too wide, nothing catches the taper of the form, and the rubber drives it and itself out.',
    values: gap,
    says: {
      narrow: 'The hole in the lid is {measured} wide; the sprue form needs {limit} to pass.',
      wide: 'The hole in the lid is {measured} wide; past {limit} the sprue form is driven out through it whole.',
    },
    remedy: {
      narrow: 'Bore the hole wider.',
      wide: 'Take a lid with a narrower hole, or a wider sprue form. Stand clear of the hole while the can is closed and hot.',
    },
    safety: true,
    formula: 'width of the shaft where it leaves the upper half <= hole <= its width at the parting plane',
    source: 'geometry; that the taper is to be caught is our own choice',
  },
  'fit.bolt-hits': {
    severity: 'stop',
    means: 'A bolt of the can goes through a cavity, a boss or a tab.',
    values: { ...gap, 'other?': 'name', 'overlap?': 'mm' },
    says: {
      meets: wallSays.meets,
      bolt: '{subject} is hit by a bolt, by {overlap}.',
      circle:
        '{subject} lies on the circle of the bolts by {overlap}, and the plan does not say where on it they stand.',
    },
    formula: 'distance of the two, seen from above, less their radii; at most 0',
    source: 'geometry',
    remedy: 'Move what it goes through, or turn the circle of bolts.',
  },
});
