import { codes } from './entry.ts';

const things = ['boss', 'bolt', 'tab', 'notch', 'sprue'] as const;
const toOutline = 'least distance of the hole from the outline of the other, seen from above';

/** Vent pins: holes through a half that let air out of the middle of a face. */
export const pinCodes = codes({
  'pins.hits-nothing': {
    severity: 'warn',
    means: 'A vent pin stands over no cavity: it lets no air out.',
    formula: 'the upright line through its middle meets no placed master',
    source: 'geometry',
    values: { half: ['lower', 'upper'] },
    says: 'This vent pin through the {half} half opens into no cavity.',
    remedy: 'Correct where it stands, or name the placement it is for.',
  },
  'pins.wrong-half': {
    severity: 'warn',
    means: 'A vent pin goes through one half, but the cavity at its place lies in the other.',
    formula: 'where the upright line through its middle lies in a placed master, against the parting surface',
    source: 'geometry',
    values: { half: ['lower', 'upper'], other: ['lower', 'upper'] },
    says: 'This vent pin goes through the {half} half, and the cavity there lies wholly in the {other} half.',
    remedy: 'Say `half: {other}`.',
  },
  'pins.through': {
    severity: 'stop',
    means: 'A vent pin goes through a boss, a bolt, a tab, a notch or the sprue.',
    formula: toOutline,
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', thing: things, other: 'name' },
    says: 'This vent pin goes through the {thing} {other}.',
    remedy: 'Move one of them.',
  },
  'pins.near': {
    severity: 'warn',
    means: 'A vent pin leaves so thin a wall to a boss, a bolt, a tab, a notch or the well that it tears.',
    formula: toOutline,
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: { measured: 'mm', limit: 'mm', thing: things, other: 'name' },
    says: 'This vent pin leaves {measured} to the {thing} {other}, where {limit} is wanted.',
    remedy: 'Move one of them, or take a thinner pin.',
  },
  'pins.rim': {
    severity: 'stop',
    means:
      'A vent pin stands outside the disc, or so near to its rim that the wall breaks out while the mold spins.',
    formula: 'radius of the disc less the distance of the hole’s outer edge from the axis',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: { measured: 'mm', limit: 'mm' },
    says: 'This vent pin leaves {measured} to the rim, where {limit} is wanted.',
    remedy: 'Move it inward.',
    safety: true,
  },
});
