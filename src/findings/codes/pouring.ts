import { codes } from './entry.ts';
import { notChecked } from './not-said.ts';

const { remedy: add, ...leftOut } = notChecked;

/** One pour after another: setting, heat of the halves. */
export const pouringCodes = codes({
  'setting.not-checked': {
    ...leftOut,
    means: 'The plan leaves out what the time until the metal has set is found from, or part of it.',
    says: {
      time: 'How long the metal takes to set is not found: the plan does not say {missing}.',
      well: 'The metal left in the well, which may set last, is not counted: the plan does not say {missing}.',
      contact:
        'Metal and halves are taken to touch perfectly, which makes the time until it has set too short: the plan does not say {missing}.',
    },
    remedy: { time: add, well: add, contact: add },
  },
  'setting.opened-early': {
    severity: 'stop',
    means: 'The mold is to be opened before all the metal in it has set.',
    values: { measured: 's', 'limit?': 's', halves: 'C' },
    says: {
      early:
        'The mold is to be opened {measured} after the pour; in halves at {halves} the last of the metal has set after {limit}.',
      never:
        'The mold is to be opened {measured} after the pour; halves at {halves} never let the metal set.',
    },
    remedy: {
      early:
        'Open later, pour a smaller shot, or let the halves cool. Molten metal runs out of a mold that is opened early.',
      never:
        'Let the halves cool below where the metal is solid. Molten metal runs out of a mold that is opened early.',
    },
    safety: true,
    formula:
      'the longest of the times in which thickest spots and metal in the well set, by heat conducted into the halves',
    source:
      'Carslaw and Jaeger, Conduction of Heat in Solids, sec. 11.2; Flemings, Solidification Processing',
  },
  'pours.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the pace of the pours, or the preheat, is found from.',
    says: 'How one pour follows another is in part not checked: the plan does not say {missing}.',
  },
  'pours.wait': {
    severity: 'note',
    means: 'Poured as fast as the metal sets, the halves would become hotter than the plan allows.',
    values: { measured: 'C', limit: 'C', cycle: 's', shortest: 's' },
    says: 'Poured every {shortest} the halves come to {measured}, where the plan allows {limit}; every {cycle} they stay within it.',
    remedy: 'Wait between pours, cool the halves, or take turns with a second mold.',
    formula: 'heat of each pour, conducted through the halves and given off at their outer faces',
    source: 'Carslaw and Jaeger, Conduction of Heat in Solids, ch. 14; limit by the plan',
  },
  'pours.cold': {
    severity: 'warn',
    means: 'The halves are so cold at the first pour that metal sets before the mold is full.',
    values: { measured: 'C', limit: 'C' },
    says: {
      sets: 'The halves have {measured} at the first pour; under {limit} the thinnest casting has set before the pour is over.',
      shop: 'The halves have {measured} at the first pour; the plan wants {limit} at least.',
    },
    remedy: {
      sets: 'Warm the halves, pour faster, or pour hotter.',
      shop: 'Warm the halves, or throw the first castings back.',
    },
    formula: 'time of the pour against heat conducted into the halves, at the smallest V / A',
    source: 'Flemings, Solidification Processing; Poirier and Geiger, ch. 10',
  },
});
