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
