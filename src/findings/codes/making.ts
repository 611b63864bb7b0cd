import { codes } from './entry.ts';

const practice = 'common practice, no published source';

export const makingCodes = codes({
  'bed.split': {
    severity: 'note',
    means: 'A fixture is larger than the bed and comes in pieces that slide together.',
    remedy: 'Join the pieces on a flat plate, glue them, and check the diameter before use.',
    formula: 'no turn about its vertical brings its box within the bed less its margin',
    source: 'geometry of the box',
  },
  'bed.cuts-outline': {
    severity: 'warn',
    means: 'No split line stays clear of every outline and boss; the seam will show there.',
    remedy: 'Use a larger bed, move the placement, or dress the seam by hand.',
    formula:
      'distance of the seam, seen from above, from the nearest outline, boss, tab or notch, at least 2 mm',
    source: practice,
  },
  'bed.cuts-text': {
    severity: 'note',
    means: 'A split line or a dovetail goes through engraved words; they are read across the seam.',
    remedy: 'Use a larger bed, or a shorter label.',
    formula: 'no text is on a seam or in the outline of a dovetail',
    source: 'geometry of the plane',
  },
  'bed.too-small': {
    severity: 'warn',
    means: 'A fixture does not fit the bed, and no sectors of it with a joint do; it is given whole.',
    remedy: 'Use a larger bed or have the piece made elsewhere.',
    formula:
      'no 2 to 8 sectors about the axis, each with room for a joint, have boxes within the bed less its margin',
    source: 'geometry of the box',
  },
  'making.overhang': {
    severity: 'warn',
    means: 'Faces of a fixture lean out further than the process can build over air.',
    remedy: 'Print with supports there, or state the limit of your printer as `fixture.overhang`.',
    formula:
      'lean from upright = asin(-nz) of the face, standing as it is made, over the first 0.3 mm; a ceiling between walls, less than 2 mm wide (twice its area over its outline), is bridged',
    source: practice,
  },
  'making.thin': {
    severity: 'warn',
    means: 'A wall or edge of a fixture is thinner than the process makes whole.',
    remedy: 'Thicken it, use a finer process, or state what yours can do as `fixture.leastFeature`.',
    formula: 'distance to the face opposite, by rays square to the surface',
    source: practice,
  },
  'making.not-checked': {
    severity: 'note',
    means: 'The plan does not say how the fixtures are made, so overhangs and thin walls are not looked at.',
    remedy: 'Add `fixture.process`: FDM, SLA or machined.',
  },
  'cup.no-sleeve': {
    severity: 'note',
    means:
      'A socket cup is too high to stay in the upper half as a sleeve; it shows the fit of its boss on the bench.',
    remedy: 'Make the upper half thicker or the boss lower, if a sleeve is wanted.',
    formula: 'thickness of the upper half less the height of the cup, against `limits.cover`',
    source: practice,
  },
  'making.none': {
    severity: 'note',
    means: 'The plan names a kind of solid to be made that its process or its mold has none of.',
    remedy: 'Take it out of `fixture.make`, or add to the plan what it is made from.',
    formula: 'each kind in `fixture.make` gives a solid or a drawing',
    source: 'own choice',
  },
  'cutter.left': {
    severity: 'warn',
    means: 'The end mill cannot reach all of a rigid half; what it leaves is given as a solid of its own.',
    remedy: 'Finish there with a smaller end mill or by hand, or round the inner corners of the master.',
    formula: 'height field of the parting face, closed by the shape of the mill, less the height field',
    source: 'J. Serra, Image Analysis and Mathematical Morphology, 1982: closing; from memory',
  },
  'cutter.inner-radius': {
    severity: 'note',
    means: 'How tight the inner edges of a rigid half are that only a ball end mill can cut.',
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
    remedy:
      'Turn the lie so that the parting line runs where the walls stand upright, or set `fixture.relieve`.',
    formula: 'angle of the material between the faces on both sides of an edge',
    source: practice,
  },
  'bed.too-high': {
    severity: 'warn',
    means: 'A fixture is higher than the bed has room for.',
    remedy: 'Use a machine with more height, or print the fixture lying if its shape allows.',
    formula: 'height of its box, standing as it is made, against the height of the bed',
    source: 'geometry of the box',
  },
});
