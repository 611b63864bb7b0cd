import { codes } from './entry.ts';
import { thinWall, wall, wallSays } from './wall.ts';

const cover = {
  measured: 'mm',
  limit: 'mm',
  half: ['lower', 'upper'],
  process: ['rubber', 'rigid', 'poured'],
  /** Thickness that would do, and the stock that has it. */
  needed: 'mm',
  'stock?': 'name',
  'stockThickness?': 'mm',
} as const;

const thicker =
  '{process, select, rubber {{stock, select, none {No stock has the {needed} it takes: sink the master differently, or stack two sheets in the {half} half.} other {Take {stock} stock, {stockThickness}, for the {half} half, or sink the master differently.}}} other {Make the {half} half at least {needed} thick, or sink the master differently.}}';

/** The maker of a rigid half, in the words of the plan. */
const comesOutWhole = 'a rigid half needs {limit} to come out whole ({making})';

export const checkCodes = codes({
  'cover.through': {
    formula: 'thickness of the half less the depth (height) of the outermost point; at most 0',
    source: 'geometry',
    severity: 'stop',
    means:
      'A cavity or fixture comes out through an outer face, so that metal can run out while the mold spins.',
    // How far it stands into the half, and how thick the half is.
    values: { ...cover, reach: 'mm', thickness: 'mm' },
    says: {
      thing:
        '{subject} comes through the outer face of the {half} half: it reaches {reach} into {thickness}.',
      parting: 'The parting surface comes through the outer face of the {half} half.',
    },
    remedy: { thing: thicker, parting: thicker },
    safety: true,
  },
  'cover.thin': {
    formula: 'thickness of the half less the depth (height) of the outermost point',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.cover`',
    severity: 'warn',
    means:
      'Too little is left between a cavity or fixture and an outer face: it bulges under the metal, tears, or burns through.',
    values: cover,
    says: {
      thing: '{subject} leaves {measured} in the {half} half, where {limit} is wanted.',
      parting:
        'Where the parting surface comes nearest, the {half} half is {measured} thick, where {limit} is wanted.',
    },
    remedy: { thing: thicker, parting: thicker },
  },
  'cover.under-process': {
    formula:
      'thickness of the half less the outermost point, or radius of the disc less it, against the least wall',
    source:
      'geometry; least wall of the process: common practice, editable in the plan as `fixture.leastFeature`',
    severity: 'stop',
    means:
      'A rigid half has a wall to an outer face or the rim that its process does not make whole, so that metal can run out while the mold spins.',
    values: { measured: 'mm', limit: 'mm', making: 'name', 'half?': ['lower', 'upper'], 'needed?': 'mm' },
    says: {
      thing: `{subject} leaves {measured} in the {half} half; ${comesOutWhole}.`,
      parting: `Where the parting surface comes nearest, the {half} half is {measured} thick; ${comesOutWhole}.`,
      rim: `{subject} leaves {measured} to the rim; ${comesOutWhole}.`,
    },
    remedy: {
      thing: 'Make the {half} half at least {needed} thick, or sink the master differently.',
      parting: 'Make the {half} half at least {needed} thick, or sink the master differently.',
      rim: 'Move it inward, or have the halves made by a finer process.',
    },
    safety: true,
  },
  'walls.under-process': {
    formula: 'true distance of the two surfaces, against the least wall of the process',
    source:
      'geometry; least wall of the process: common practice, editable in the plan as `fixture.leastFeature`',
    severity: 'stop',
    means: 'A wall in a rigid half is thinner than its process makes whole, so that it comes out with holes.',
    values: { ...wall, making: 'name' },
    says: `The wall between {subject} and {other} is {measured}; ${comesOutWhole}.`,
    remedy: 'Move the two apart, or have the halves made by a finer process.',
  },
  'walls.broken': {
    formula: 'true distance of the two surfaces is 0',
    source: 'geometry',
    severity: 'stop',
    means:
      'Two cavities, or a cavity and a boss or the well, run into each other: castings come out joined, or the boss is cast in.',
    values: wall,
    says: { meets: wallSays.meets },
    remedy: 'Move one of them away from the other.',
  },
  'walls.thin': {
    ...thinWall,
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    means: 'The wall between two cavities is thin: it bends under pressure, and flash joins the castings.',
    remedy: 'Move the two apart, or take one of them off this disc.',
  },
  'walls.boss': {
    ...thinWall,
    source: 'geometry; starting limit from memory, editable in the plan as `limits.cavityToBoss`',
    means: 'A cavity lies close to a boss: the rubber between them tears when the halves are pulled apart.',
    remedy: 'Move the boss or the master.',
  },
  'walls.well': {
    ...thinWall,
    source: 'geometry; starting limit from memory, editable in the plan as `limits.cavityToWell`',
    means:
      'A cavity lies close to the well, which leaves little length for a gate and little rubber under the stream.',
    remedy: 'Move the master outward, or make the well smaller.',
  },
  'walls.rim': {
    formula: 'radius of the disc less that of the outermost point',
    source:
      'geometry; starting limit from memory, editable in the plan as `limits.cavityToRim` and `limits.bossToRim`',
    severity: 'warn',
    means:
      'A cavity or boss lies close to the rim, where the pressure is highest and the rubber least backed.',
    values: { measured: 'mm', limit: 'mm' },
    says: '{subject} leaves {measured} to the rim, where {limit} is wanted.',
    remedy: 'Move it inward or choose a larger disc.',
  },
  'walls.rim-open': {
    formula: 'radius of the disc less that of the outermost point; at most 0',
    source: 'geometry',
    severity: 'stop',
    means: 'A cavity or boss reaches through the rim, so that metal can fly out while the mold spins.',
    values: { measured: 'mm', limit: 'mm', beyond: 'mm' },
    says: '{subject} reaches {beyond} beyond the rim.',
    remedy: 'Move it inward or choose a larger disc.',
    safety: true,
  },
  'registration.closes-turned': {
    formula:
      'd(angle): greatest distance of a boss to its socket under the best assignment; its least minimum outside the true seat, against the larger of the limit and the widest head radius',
    source:
      'bottleneck assignment by critical angles; unequal bosses near the rim are common practice, no published source; starting limit from memory, editable in the plan as `limits.falseSeat`',
    severity: 'stop',
    means:
      'The halves also close, or nearly so, turned against each other: sooner or later somebody closes them so, and both faces of every casting are shifted.',
    values: { measured: 'mm', limit: 'mm', angle: 'deg' },
    says: 'Turned by {angle} every boss finds a socket within {measured}; at least {limit} is wanted.',
    remedy: 'Make the pattern uneven: move one boss along the rim, or give it another size.',
  },
  'registration.too-few': {
    severity: 'warn',
    means: 'Fewer than two bosses hold the halves: nothing keeps one half from turning on the other.',
    formula: 'number of bosses; at least 2',
    source: 'common practice, no published source',
    values: { measured: 'count', limit: 'count' },
    says: '{measured, plural, =0 {No boss holds the halves together.} other {A single boss holds the halves: they turn about it.}}',
    remedy: 'Set at least two bosses, three near the rim for a round disc.',
  },
});
