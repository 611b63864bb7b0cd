import { codes } from './entry.ts';

const practice = 'common practice, no published source';

/** Of the inner edges in the cavities of a half, and of those beside them: the tightest, or those no ball gets into. */
const inCavities =
  'In the cavities of the {half} half {cavityRadius, select, none {{cavitySharp} of inner edges run in sharper than any ball end mill, such as at {cavity}} other {the tightest inner edge has a radius of {cavityRadius}, at {cavity}: it takes a ball end mill of {cavityBall} at most}}.';
/** By its name what has one, the rest of the half by where it is. */
const besideAt = '{beside, select, none {{besidePlace}} other {{beside}}}';
const besideCavities =
  `Beside the cavities of the {half} half {besideRadius, select, none {{besideSharp} of inner edges run in sharper than any ball end mill, such as at ${besideAt}} other {the tightest inner edge has a radius of {besideRadius}, at ${besideAt}: it takes a ball end mill of {besideBall} at most}}.` as const;

const spots = '{spots, plural, one {# spot} other {# spots}}';
const lookedAt = 'up to {height} high; looked at every {cell}';

export const makingCodes = codes({
  'bed.split': {
    severity: 'note',
    means: 'A fixture is larger than the bed and comes in pieces that slide together.',
    values: { measured: 'count', title: 'name', width: 'mm', depth: 'mm', joint: 'mm' },
    says: 'The {title} is larger than the bed of {width} x {depth} and comes in {measured} pieces; their dovetails have {joint} of room on each side.',
    remedy: 'Join the pieces on a flat plate, glue them, and check the diameter before use.',
    formula: 'no turn about its vertical brings its box within the bed less its margin',
    source: 'geometry of the box',
  },
  'bed.cuts-outline': {
    severity: 'warn',
    means: 'No split line stays clear of every outline and boss; the seam will show there.',
    values: { measured: 'mm', limit: 'mm', title: 'name', nearest: 'name' },
    says: {
      through: 'A split line of the {title} goes through {nearest}.',
      near: 'A split line of the {title} comes within {measured} of {nearest}.',
    },
    remedy: 'Use a larger bed, move the placement, or dress the seam by hand.',
    formula:
      'distance of the seam, seen from above, from the nearest outline, boss, tab or notch, at least 2 mm',
    source: practice,
  },
  'bed.cuts-text': {
    severity: 'note',
    means: 'A split line or a dovetail goes through engraved words; they are read across the seam.',
    values: { measured: 'count', limit: 'count', title: 'name' },
    says: 'Split lines of the {title} or their dovetails go through {measured} of the texts on it.',
    remedy: 'Use a larger bed, or a shorter label.',
    formula: 'no text is on a seam or in the outline of a dovetail',
    source: 'geometry of the plane',
  },
  'bed.too-small': {
    severity: 'warn',
    means: 'A fixture does not fit the bed, and no sectors of it with a joint do; it is given whole.',
    values: { 'limit?': 'mm', title: 'name', 'width?': 'mm', 'depth?': 'mm', 'fault?': 'name' },
    says: {
      'no-joint': 'The {title} does not fit a bed of {width} x {depth}, nor do sectors of it with a joint.',
      failed: 'The {title} could not be split to fit the bed: {fault}.',
    },
    remedy: 'Use a larger bed or have the piece made elsewhere.',
    formula:
      'no 2 to 8 sectors about the axis, each with room for a joint, have boxes within the bed less its margin',
    source: 'geometry of the box',
  },
  'making.overhang': {
    severity: 'warn',
    means: 'Faces of a fixture lean out further than the process can build over air.',
    values: { measured: 'mm2', title: 'name', allowed: 'deg', steepest: 'deg' },
    says: '{measured} of the {title} hang over by more than {allowed} from upright, up to {steepest}.',
    remedy: 'Print with supports there, or state the limit of your printer as `fixture.overhang`.',
    formula:
      'lean from upright = asin(-nz) of the face, standing as it is made, over the first 0.3 mm; a ceiling between walls, less than 2 mm wide (twice its area over its outline), is bridged',
    source: practice,
  },
  'making.thin': {
    severity: 'warn',
    means: 'A wall or edge of a fixture is thinner than the process makes whole.',
    values: { measured: 'mm', limit: 'mm', title: 'name', rays: 'count' },
    says: 'The {title} is {measured} thick at one place, under the {limit} that come out whole (looked at from up to {rays} places on it).',
    remedy: 'Thicken it, use a finer process, or state what yours can do as `fixture.leastFeature`.',
    formula: 'distance to the face opposite, by rays square to the surface',
    source: practice,
  },
  'making.not-checked': {
    severity: 'note',
    means: 'The plan does not say how the fixtures are made, so overhangs and thin walls are not looked at.',
    says: 'How the fixtures are made is not said; overhangs and least features are not looked at.',
    remedy: 'Add `fixture.process`: FDM, SLA or machined.',
  },
  'cup.no-sleeve': {
    severity: 'note',
    means:
      'A socket cup is too high to stay in the upper half as a sleeve; it shows the fit of its boss on the bench.',
    values: { measured: 'mm', limit: 'mm', title: 'name' },
    says: {
      thin: 'The {title} would leave {measured} of rubber over it in the upper half: it is for trying the fit alone.',
      high: 'The {title} is higher than the upper half: it is for trying the fit alone.',
    },
    remedy: 'Make the upper half thicker or the boss lower, if a sleeve is wanted.',
    formula: 'thickness of the upper half less the height of the cup, against `limits.cover`',
    source: practice,
  },
  'making.none': {
    severity: 'note',
    means: 'The plan names a kind of solid to be made that its process or its mold has none of.',
    values: { kind: 'name' },
    says: 'The plan wants `{kind}` made, and this mold has none.',
    remedy: 'Take it out of `fixture.make`, or add to the plan what it is made from.',
    formula: 'each kind in `fixture.make` gives a solid or a drawing',
    source: 'own choice',
  },
  'cutter.left': {
    severity: 'warn',
    means: 'The end mill cannot reach all of a rigid half; what it leaves is given as a solid of its own.',
    values: {
      measured: 'mm3',
      half: ['lower', 'upper'],
      mill: ['flat', 'ball'],
      diameter: 'mm',
      area: 'mm2',
      spots: 'count',
      height: 'mm',
      cell: 'mm',
    },
    says: {
      thing: `A {mill} end mill of {diameter} leaves at least {measured} on {area} in ${spots} of the {half} half at {subject}, ${lookedAt}.`,
      half: `A {mill} end mill of {diameter} leaves at least {measured} on {area} in ${spots} of the {half} half, ${lookedAt}.`,
    },
    remedy: 'Finish there with a smaller end mill or by hand, or round the inner corners of the master.',
    formula: 'height field of the parting face, closed by the shape of the mill, less the height field',
    source: 'J. Serra, Image Analysis and Mathematical Morphology, 1982: closing; from memory',
  },
  'cutter.inner-radius': {
    severity: 'note',
    means: 'How tight the inner edges of a rigid half are that only a ball end mill can cut.',
    values: {
      measured: 'mm',
      half: ['lower', 'upper'],
      'cavity?': 'name',
      'cavityRadius?': 'mm',
      'cavityBall?': 'mm',
      'cavitySharp?': 'mm',
      'beside?': 'name',
      'besidePlace?': 'point',
      'besideRadius?': 'mm',
      'besideBall?': 'mm',
      'besideSharp?': 'mm',
    },
    says: {
      cavities: inCavities,
      beside: besideCavities,
      both: `${inCavities} ${besideCavities}`,
    },
    remedy: 'Choose the last mill by it; where it is sharp, finish by hand or round the master there.',
    formula:
      'at the middle p of each inner edge, n between the normals of its faces: the largest r for which a ball about ' +
      'p + (r + 0.02 mm) n touches nothing; 0 where that is under 0.1 mm',
    source:
      'J. Ma, S. W. Bae, S. Choi, 3D medial axis point approximation using nearest neighbors and the normal field, 2012: the shrinking ball; from memory',
  },
  'cutter.knife-edge': {
    severity: 'warn',
    means: 'Faces of a rigid half meet in an edge so sharp that it chips, bends or burrs.',
    values: { measured: 'mm', half: ['lower', 'upper'], sharper: 'deg', sharpest: 'deg' },
    says: 'The {half} half has {measured} of edges sharper than {sharper}, the sharpest {sharpest}.',
    remedy:
      'Turn the lie so that the parting line runs where the walls stand upright, or set `fixture.relieve`.',
    formula: 'angle of the material between the faces on both sides of an edge',
    source: practice,
  },
  'bed.too-high': {
    severity: 'warn',
    means: 'A fixture is higher than the bed has room for.',
    values: { measured: 'mm', limit: 'mm', title: 'name' },
    says: 'The {title} is {measured} high, over the {limit} the bed has room for.',
    remedy: 'Use a machine with more height, or print the fixture lying if its shape allows.',
    formula: 'height of its box, standing as it is made, against the height of the bed',
    source: 'geometry of the box',
  },
});
