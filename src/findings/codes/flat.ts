import { codes } from './entry.ts';

/** Two openings of one sheet that share area. */
const sharing = { measured: 'mm2', limit: 'mm2', one: 'name', other: 'name' } as const;

/** Jig, layout plate and other flat fixtures. */
export const flatCodes = codes({
  'jig.thin': {
    severity: 'stop',
    means: 'The ring of the registration jig has too little material beside a pocket to hold a nut in place.',
    values: { measured: 'mm', limit: 'mm', boss: 'name', more: 'count' },
    says: 'The registration jig has {measured} of material beside the opening for {boss}{more, plural, =0 {} other { and too little beside # more}}.',
    remedy:
      'Move the boss farther from the rim or from its neighbor, take a smaller nut, or a wider ring as `fixture.jig.width`.',
    formula: 'material beside a pocket >= 1.5 mm',
    source: 'common practice, no published source',
  },
  'jig.low': {
    severity: 'warn',
    means:
      'The registration jig is thinner than the nuts or roots it holds are high, so that they can tip in it.',
    values: { measured: 'mm', limit: 'mm' },
    says: 'The registration jig is {measured} thick, and what it holds is {limit} high.',
    remedy: 'Leave out `fixture.jig.thickness`, or make it as large as said.',
    formula: 'thickness of the ring >= height of hexagon or root',
    source: 'common practice, no published source',
  },
  'layout-plate.overlap': {
    severity: 'stop',
    means: 'Two openings of the layout plate run into each other; it cannot show where each master goes.',
    values: sharing,
    says: 'On the layout plate the openings for {one} and {other} run into each other.',
    remedy: 'Move the placements apart.',
    formula: 'openings, masters with clearance, share no area',
    source: 'own choice',
  },
  'nest.meets': {
    severity: 'note',
    means: 'The windows of two build-ups in a nest run into each other; one window is left for both.',
    values: sharing,
    says: 'In the nest the windows of build-ups {one} and {other} run into each other.',
    remedy: 'Lay both in by their numbers, the larger one first; or move the placements apart.',
    formula: 'windows, feet of build-ups with clearance, share no area',
    source: 'own choice',
  },
  'nest.broken': {
    severity: 'stop',
    means: 'A window of a nest runs into the hole for a boss or the sprue form, or out through the rim.',
    values: { 'measured?': 'mm', 'limit?': 'mm', number: 'name', placement: 'name' },
    says: {
      hole: 'The window of build-up {number} at {placement} runs into a hole for a boss or the sprue form.',
      rim: 'The window of build-up {number} at {placement} runs into the rim.',
    },
    remedy: 'Move the placement away from there, or leave the nest out of `fixture.make`.',
    formula: 'a window shares no area with a hole and ends 1.5 mm inside of the rim',
    source: 'common practice, no published source',
  },
  'plate.no-name': {
    severity: 'note',
    means: 'Beside an opening of a plate there is no room for its name or number.',
    values: { measured: 'count', limit: 'count', title: 'name', ids: 'names' },
    says: 'The {title} has no room for {measured, plural, one {the name} other {the names}} of {ids}, which {measured, plural, one {is} other {are}} left off.',
    remedy: 'Mark it by hand from the plan view of the shop sheet.',
    formula: 'capitals of 3 mm, clear of openings, scales and other names',
    source: 'common practice, no published source',
  },
  'stencil.slots-meet': {
    severity: 'note',
    means: 'Two slots of the knife stencil run into each other, so that the strip between them comes loose.',
    values: sharing,
    says: 'On the knife stencil the slots of {one} and {other} run into each other.',
    remedy: 'Turn one of the placements, or cut one of the two channels by eye.',
    formula: 'slots share no area',
    source: 'own choice',
  },
});
