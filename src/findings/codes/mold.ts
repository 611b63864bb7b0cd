import { codes } from './entry.ts';

const withinMaster = {
  values: { measured: 'mm3', limit: 'mm3', depth: 'mm' },
  says: '{measured} of undercut within {subject} stay whatever the parting surface does, {depth} at the deepest.',
} as const;

export const moldCodes = codes({
  'mold.parting-conflict': {
    severity: 'warn',
    means:
      "Between this master and its neighbor, the rim or a fixture the parting surface has too little room to climb to the master's widest contour: a sliver of rubber stays caught there.",
    formula:
      'greatest height from the parting surface to the nearest point of the master in its column, over 0.1 mm; a warning where more than 1 mm3 of undercut is left',
    source: 'geometry, in columns; both limits are our own choice',
    values: { measured: 'mm', limit: 'mm', room: 'mm', volume: 'mm3' },
    says: 'At {subject} the parting surface lacks {room} of room to change height; it misses the contour by up to {measured}, which leaves {volume} of undercut.',
    remedy:
      'Give the place named more room, sink the masters to nearer heights, or allow a steeper `parting.slope`.',
  },
  'mold.parting-limit': {
    severity: 'warn',
    means: 'A master is wholly above or below the height the parting surface may reach.',
    formula: 'lowest (highest) point of a column against `parting.limit`',
    source: 'geometry; limit from the plan',
    values: { measured: 'mm', limit: 'mm', beyond: 'mm', way: ['rise', 'fall'] },
    says: '{subject} lies up to {beyond} beyond the {limit} the parting surface may {way}.',
    remedy: 'Sink the master to another depth or widen `parting.limit`.',
  },
  'mold.parting-steep': {
    severity: 'warn',
    means: 'Between close neighbors the parting surface had to be made steeper than asked for.',
    formula: 'share of the sloped area steeper than 1.1 times `parting.slope`; at most 5 %',
    source: 'central differences on the grid; the share is our own choice',
    values: { measured: 'deg', limit: 'deg', share: 'ratio' },
    says: '{share} of the sloped parting surface is steeper than the {limit} asked for, at most {measured}.',
    remedy: 'Move the neighbors apart or sink them to nearer heights.',
  },
  'mold.parting-grazes': {
    severity: 'warn',
    means: 'The parting surface runs along the skin of a master so closely that thin flakes are left.',
    formula: 'skin of the master over the parting surface thinner than 0.02 mm, on more than 0.25 mm2',
    source: 'geometry, in columns; both limits are our own choice',
    values: { measured: 'mm', limit: 'mm', area: 'mm2' },
    says: 'The parting surface runs within {limit} of the skin of {subject} over {area}.',
    remedy: 'Change the sink of the master a little, or turn it.',
  },
  'mold.undercut-locked': {
    severity: 'warn',
    means:
      'Turned as it is, this master holds undercuts that no parting surface can free: looking straight down, there is air between layers of it, and rubber fills that air.',
    formula:
      'air between layers of the master, over 30 % of the undercut that a flat parting plane would leave and over 1 % of the master',
    source: 'geometry, in columns; both shares are our own choice',
    values: withinMaster.values,
    says: withinMaster.says,
    remedy:
      'Turn the master (`discwright inspect --lie` ranks the ways), or rely on the rubber to give; a rigid half cannot release it.',
  },
  'mold.layered-columns': {
    severity: 'note',
    means:
      'Seen from above, parts of a master lie over other parts of it. What is between stays undercut wherever the halves part; rubber has to bend round it.',
    formula: 'air between layers of the master; over 1 mm3',
    source: 'geometry, in columns; the limit is our own choice',
    values: withinMaster.values,
    says: withinMaster.says,
    remedy: 'Look at the place named; `discwright inspect --lie` shows whether another lie has less.',
  },
  'mold.knife-edge': {
    severity: 'warn',
    means:
      'A master runs out so thin that metal is not likely to fill it and the halves meet in a blade there.',
    formula: 'thickness of the master, seen from above, under 0.1 mm on more than 0.25 mm2',
    source: 'common practice, no published source',
    values: { measured: 'mm', limit: 'mm', area: 'mm2' },
    says: '{subject} is as thin as {measured} over {area}.',
    remedy: 'Thicken the edge of the master.',
  },
  'mold.thin-features': {
    severity: 'warn',
    means: 'A master has features narrower than two cells of the parting surface, which it cannot follow.',
    formula: 'width of the master, seen from above, under two cells of the grid',
    source: 'sampling: what is narrower falls between the columns',
    values: { measured: 'count', limit: 'mm' },
    says: '{subject} has features narrower than {limit} seen from above ({measured, plural, one {# place} other {# places}}).',
    remedy: 'Choose a finer `parting.cell`.',
  },
  'mold.crossed-shells': {
    severity: 'warn',
    means: 'A master crosses or overlaps itself, so that inside and outside are not told apart there.',
    formula: 'columns in which inside and outside do not alternate; over 0.2 % of all',
    source: 'geometry, in columns; the share is our own choice',
    values: { measured: 'mm2' },
    says: '{subject} crosses itself over {measured}, seen from above.',
    remedy: 'Mend the master, or let the import make it anew.',
  },
  'mold.small-build-ups': {
    severity: 'note',
    means: 'Build-ups too small to be printed and handled are left out of the files.',
    formula: 'volume of a build-up; under 10 mm3',
    source: 'from memory: about the least that fingers can set',
    values: { measured: 'mm3', limit: 'mm3', pieces: 'count' },
    says: '{pieces, plural, one {One build-up} other {# build-ups}} of {subject}, {measured} in all, would be too small to handle and {pieces, plural, one {is} other {are}} left out.',
    remedy: 'Pack scraps of rubber there by hand, or let the rubber flow in when the half is pressed.',
  },
  'mold.loose-piece': {
    severity: 'warn',
    means: 'A piece of a half hangs on nothing: a master encloses it.',
    formula: 'pieces of a half that touch nothing of it; over 0.01 mm3',
    source: 'geometry; the limit is our own choice',
    values: { measured: 'mm3' },
    says: 'A piece of {measured} hangs on neither half and is left out of both.',
    remedy: 'Open or close the hole in the master.',
  },
});
