import { codes } from './entry.ts';

/** Jig, layout plate and other flat fixtures. */
export const flatCodes = codes({
  'jig.thin': {
    severity: 'stop',
    means: 'The ring of the registration jig has too little material beside a pocket to hold a nut in place.',
    remedy:
      'Move the boss farther from the rim or from its neighbor, take a smaller nut, or a wider ring as `fixture.jig.width`.',
    formula: 'material beside a pocket >= 1.5 mm',
    source: 'common practice, no published source',
  },
  'jig.low': {
    severity: 'warn',
    means:
      'The registration jig is thinner than the nuts or roots it holds are high, so that they can tip in it.',
    remedy: 'Leave out `fixture.jig.thickness`, or make it as large as said.',
    formula: 'thickness of the ring >= height of hexagon or root',
    source: 'common practice, no published source',
  },
  'layout-plate.overlap': {
    severity: 'stop',
    means: 'Two openings of the layout plate run into each other; it cannot show where each master goes.',
    remedy: 'Move the placements apart.',
    formula: 'openings, masters with clearance, share no area',
    source: 'own choice',
  },
  'nest.meets': {
    severity: 'note',
    means: 'The windows of two build-ups in a nest run into each other; one window is left for both.',
    remedy: 'Lay both in by their numbers, the larger one first; or move the placements apart.',
    formula: 'windows, feet of build-ups with clearance, share no area',
    source: 'own choice',
  },
  'nest.broken': {
    severity: 'stop',
    means: 'A window of a nest runs into the hole for a boss or the sprue form, or out through the rim.',
    remedy: 'Move the placement away from there, or leave the nest out of `fixture.make`.',
    formula: 'a window shares no area with a hole and ends 1.5 mm inside of the rim',
    source: 'common practice, no published source',
  },
  'plate.no-name': {
    severity: 'note',
    means: 'Beside an opening of a plate there is no room for its name or number.',
    remedy: 'Mark it by hand from the plan view of the shop sheet.',
    formula: 'capitals of 3 mm, clear of openings, scales and other names',
    source: 'common practice, no published source',
  },
  'stencil.slots-meet': {
    severity: 'note',
    means: 'Two slots of the knife stencil run into each other, so that the strip between them comes loose.',
    remedy: 'Turn one of the placements, or cut one of the two channels by eye.',
    formula: 'slots share no area',
    source: 'own choice',
  },
});
