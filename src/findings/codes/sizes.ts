import { didYouMean } from './did-you-mean.ts';
import { codes } from './entry.ts';

/** Sizes of disc and sprue form that no solid can have. */
export const sizeCodes = codes({
  'layout.disc-form': {
    severity: 'stop',
    means:
      'The halves are so thin or so small that they cannot have their index mark, which runs out below the chamfer.',
    formula:
      'thinner half against 0.8 mm and the chamfer of the rim; diameter against twice 8 mm and the chamfer; not over it',
    source: 'geometry of the index mark',
    values: { measured: 'mm', limit: 'mm', 'meant?': 'names' },
    says: {
      thin: 'A half is {measured} thick: the index mark and the chamfer of the rim, {limit} deep, go through it.',
      small: 'A disc {measured} across has no room for the index mark and the chamfer of the rim.',
    },
    remedy: {
      thin: `Take halves thicker than {limit}, or a smaller \`rimChamfer\`.${didYouMean}`,
      small: `Take a disc more than {limit} across, or a smaller \`rimChamfer\`.${didYouMean}`,
    },
  },
  'layout.sprue-form': {
    severity: 'stop',
    means: 'The sizes of the sprue form contradict each other, or disc and halves: there is no such form.',
    formula:
      'from the axis outward dome, floor of the well, well, rim; the dome lower than the well and than half its width; the well 1 mm inside the rim; fillets no longer than the faces they join; a spigot over 0.5 mm with 1 mm of wall; 2 mm under the puller hole; a plug wider than nothing',
    source: 'geometry; wall and floor are common practice, no published source',
    values: { measured: 'mm', limit: 'mm', 'meant?': 'names' },
    says: {
      'well-narrow': 'The well is {measured} across, the pouring hole over it {limit}.',
      'well-rim': 'The well is {measured} across; the disc has room for {limit}.',
      'well-closed': 'With its draft the well closes before it reaches its floor.',
      'dome-high':
        'The dome is {measured} high in a well {limit} deep: it would stand out of the lower half.',
      'dome-steep': 'The dome is {measured} high, more than half its width ({limit}): it cannot be pulled.',
      'dome-wide': 'The dome is {measured} across, the floor of the well {limit}.',
      'fillet-well': 'There is no room for a fillet of {measured} at the floor of the well.',
      'fillet-mouth': 'There is no room for a fillet of {measured} at the mouth of the pouring hole.',
      plug: 'The pouring hole is {measured} across at the top: nothing is left of a plug with its clearance.',
      spigot: 'The hole leaves {measured} for the spigot between two pieces.',
      'spigot-wall': 'The shaft leaves {measured} of wall round the hole of the spigot.',
      'spigot-deep': 'The shaft leaves {measured} over the hole of the spigot.',
      puller: 'Form and plug stand {measured} over the parting plane, too low for a puller hole.',
    },
    remedy: {
      'well-narrow': `Take a well wider than {limit}, or a narrower hole.${didYouMean}`,
      'well-rim': `Take a well and hole narrower than {limit}, or a larger disc.${didYouMean}`,
      'well-closed': `Take less draft, a wider well or a shallower one.${didYouMean}`,
      'dome-high': `Take a dome lower than {limit}, or a deeper well.${didYouMean}`,
      'dome-steep': `Take a dome of at most {limit}, or a wider one.${didYouMean}`,
      'dome-wide': `Take a dome narrower than {limit}, or a wider well.${didYouMean}`,
      'fillet-well': `Take a fillet under {limit}, a narrower dome, or a wider and deeper well.${didYouMean}`,
      'fillet-mouth': `Take a fillet under {limit}, a wider well, or a thicker upper half.${didYouMean}`,
      plug: `Take a hole that is more than {limit} across at the top, or a smaller \`fixture.clearance\`.${didYouMean}`,
      spigot: `Make the form in one piece, or the hole and the upper half larger: more than {limit} is needed.${didYouMean}`,
      'spigot-wall': `Make the form in one piece, with less draft, or the hole wider: more than {limit} is needed.${didYouMean}`,
      'spigot-deep': `Make the form in one piece, or the grip longer: more than {limit} is needed.${didYouMean}`,
      puller: `Take a longer grip or a thicker upper half, more than {limit} in all, or leave out the puller.${didYouMean}`,
    },
  },
});
