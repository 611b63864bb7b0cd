import type { FigureName } from '../../src/findings/index.ts';

/** What a computation is held to, from the strongest kind to the weakest. */
export type SourceKind =
  | 'standard'
  | 'handbook'
  | 'paper'
  | "maker's table"
  | 'closed form'
  | 'open mesh'
  | 'common practice, no published source';

/** One check of figures against something outside the project. */
export interface OutsideCheck {
  readonly figures: readonly FigureName[];
  readonly source: string;
  readonly kind: SourceKind;
  /** The value that is expected. */
  readonly value: string;
  /** File in this folder, and a piece of the full title of the test in it, as it stands in the source. */
  readonly file: string;
  readonly test: string;
}

/**
 * Every figure of the catalogue with what its computation is held to; one row for each check. `docs/sources.md` is
 * made from it. The tests fail where a figure has no row, or where the test a row names is not there or does not pass.
 */
export const outsideChecks: readonly OutsideCheck[] = [
  {
    figures: [
      'depth.below',
      'height.above',
      'cover.lower',
      'cover.upper',
      'cover.least',
      'cover.needs-lower',
      'cover.needs-upper',
    ],
    source: 'ball of radius 5 mm, center 1.5 mm above the parting plane, in halves of 12.7 mm: its poles',
    kind: 'closed form',
    value: '3.5 below, 6.5 above; cover 9.2 and 6.2 mm',
    file: 'distances.test.ts',
    test: 'reach of a ball into both halves',
  },
  {
    figures: ['cover.stock-lower', 'cover.stock-upper'],
    source: 'common stock of uncured halves, 1/4 to 1 in by 1/8 in (from memory)',
    kind: 'common practice, no published source',
    value: '6.5 and 9.5 mm: 3/8 in',
    file: 'distances.test.ts',
    test: 'stock for a ball in both halves',
  },
  {
    figures: ['cover.parting-lower', 'cover.parting-upper'],
    source: 'parting surface with a cone 4 mm high and a dish 3 mm deep, in halves of 12.7 mm',
    kind: 'closed form',
    value: '9.7 and 8.7 mm',
    file: 'distances.test.ts',
    test: 'halves under a surface with a cone and a dish',
  },
  {
    figures: ['walls.channel', 'walls.tab'],
    source:
      'box beside a straight bar and before the tip of a V: middle distance less half widths; radius less depth',
    kind: 'closed form',
    value: '2.5 and 2 mm',
    file: 'distances.test.ts',
    test: 'wall between a box and straight channels and notches',
  },
  {
    figures: ['walls.least'],
    source: 'distance of the corners of two boxes, (3, 4, 0) apart; of two balls, centers less radii',
    kind: 'closed form',
    value: '5 mm; 4 mm',
    file: 'distances.test.ts',
    test: 'wall between two bodies',
  },
  {
    figures: ['walls.boss', 'walls.well', 'walls.rim'],
    source: 'box against a round: distances of faces and corners from its axis, against its radius',
    kind: 'closed form',
    value: '4.5, 7 and 15.959 mm',
    file: 'distances.test.ts',
    test: 'wall between a box and a round',
  },
  {
    figures: ['registration.falseSeat', 'registration.falseSeats', 'registration.falseSeatAngle'],
    source:
      'three equal bosses at 0, 120 and 250 degrees on R 100: the steps between them differ by up to 20 degrees',
    kind: 'closed form',
    value: '2 R sin(5 deg) = 8.716 mm at 120 and 240 degrees',
    file: 'distances.test.ts',
    test: 'false seats of three bosses',
  },
  {
    figures: ['registration.falseSeat'],
    source: 'unequal cap nuts near the rim close one way only',
    kind: 'common practice, no published source',
    value: 'no seat within the limit',
    file: 'distances.test.ts',
    test: 'unequal cap nuts near the rim',
  },
  {
    figures: ['registration.turn'],
    source:
      'Drake (ed.), Dimensioning and Tolerancing Handbook, ch. 24, "Pinned Interfaces": (c1 + c2) / d, c / R',
    kind: 'handbook',
    value: 'c 0.15 on R 100: 0.0015 rad',
    file: 'play.test.ts',
    test: 'registration.turn of',
  },
  {
    figures: ['registration.shift', 'registration.mismatch'],
    source: 'equal pins: shift c; a point L from the center moves by c L / R',
    kind: 'closed form',
    value: '0.2 mm; 0.25 mm',
    file: 'play.test.ts',
    test: 'registration.shift and registration.mismatch of equal pins',
  },
  {
    figures: ['closing.force', 'closing.boltProof', 'closing.boltShare', 'closing.held'],
    source: 'four 3/8-16 bolts of SAE J429 grade 2 against 2 MPa (range of ISO 2393) on a can 9 in across',
    kind: 'standard',
    value: '18 453 lbf on 4 x 4262 lbf',
    file: 'closing.test.ts',
    test: 'gives the figures of the worked case',
  },
  {
    figures: ['closing.held'],
    source: 'pressure times area with a quarter to spare, in a press of that rating',
    kind: 'closed form',
    value: '2 MPa on a can 9 in across',
    file: 'closing.test.ts',
    test: 'a press holds with a quarter to spare; bolts add nothing, nor do weaker clamps round it',
  },
  {
    figures: ['closing.boltProof'],
    source: 'ISO 898-1, proof loads of coarse threads',
    kind: 'standard',
    value: 'M10 8.8: 33 700 N',
    file: 'closing.test.ts',
    test: 'by ISO 898-1',
  },
  {
    figures: ['closing.lidStress', 'closing.lidBow'],
    source: "Roark's Formulas for Stress and Strain: round plate, simply supported, even load",
    kind: 'handbook',
    value: '9 in, 1.5 MPa, steel of 12.7 mm: 150 MPa, 0.43 mm',
    file: 'closing.test.ts',
    test: 'a lid of ',
  },
  {
    figures: ['undercut.upper', 'undercut.share', 'undercut.depth-upper'],
    source:
      'ball of radius R raised by h over the plane: air under it pi h^3 / 3, of its volume h^3 / (4 R^3)',
    kind: 'closed form',
    value: 'R 5, h 2: 8.378 mm3, 1.6 %',
    file: 'release.test.ts',
    test: 'undercut.upper and undercut.share of a raised ball',
  },
  {
    figures: ['undercut.lower', 'undercut.depth-lower'],
    source: 'the same ball sunk by h',
    kind: 'closed form',
    value: 'R 5, h 2: 8.378 mm3',
    file: 'release.test.ts',
    test: 'undercut.lower of a sunk ball',
  },
  {
    figures: ['draft.little'],
    source: "Archimedes, On the Sphere and Cylinder: a zone's area is 2 pi R times its height",
    kind: 'closed form',
    value: 'ball parted at its equator: 4 pi R^2 sin 1 degree',
    file: 'release.test.ts',
    test: 'draft.little of a ball parted at its equator',
  },
  {
    figures: ['support.slenderness', 'support.gap', 'support.free', 'support.held'],
    source:
      'a shelf 10 mm long, 4 wide, 1 thick, 2 over the plane: l / t, g, l b; no build-up, so nothing held',
    kind: 'closed form',
    value: '10; 2 mm; 40 mm2; 0',
    file: 'support.test.ts',
    test: 'support.slenderness, support.gap and support.free of a shelf',
  },
  {
    figures: ['support.slenderness'],
    source:
      'Zhao, A fast sweeping method for eikonal equations, Math. Comp. 74 (2005) 603-627: error of order h log h',
    kind: 'paper',
    value: 'distance from the middle of a square',
    file: 'support.test.ts',
    test: 'support.slenderness: lengths from a point',
  },
  {
    figures: ['heat.limit'],
    source: 'tables of deflection temperatures of printing materials; solidus of alloys',
    kind: "maker's table",
    value: 'PLA 58.8 C less 10 K; Bi58Sn42 138 C less 20 K',
    file: 'heat-limits.test.ts',
    test: '%s: %d C less %d K',
  },
  {
    figures: ['heat.halfLimit'],
    source: 'solidus of aluminum 6061',
    kind: "maker's table",
    value: '582 C',
    file: 'heat-limits.test.ts',
    test: 'those of aluminum stand zinc below its own solidus',
  },
  {
    figures: [
      'balance.static',
      'balance.angle',
      'balance.lower',
      'balance.upper',
      'balance.misrun',
      'balance.correction',
      'balance.rotor',
      'balance.permissible',
    ],
    source: 'a brick of 1 cm3 of metal in the place of rubber, 10 g heavier, 80 mm from the axis',
    kind: 'closed form',
    value: '800 g.mm at 0 deg, 400 on each face; 6.4 g at the rim; 80 g.mm left empty',
    file: 'turning.test.ts',
    test: 'one cavity of 10 g at 80 mm',
  },
  {
    figures: ['balance.permissible'],
    source: 'ISO 21940-11:2016, 9549 G m / n',
    kind: 'standard',
    value: '501.34 g.mm for G6.3, 5 kg, 600 rpm; three more',
    file: 'turning.test.ts',
    test: 'permissible unbalance of ISO 21940-11',
  },
  {
    figures: ['balance.static', 'balance.angle', 'balance.lower', 'balance.upper'],
    source: 'two masses at two heights, moments taken by hand about both planes',
    kind: 'closed form',
    value: '120.104 g.mm at 103.236 deg and 105.000 at 21.787; static 170.880 at 65.818',
    file: 'turning.test.ts',
    test: 'of two masses, carried to two planes',
  },
  {
    figures: ['fit.canGap', 'fit.depthLeft'],
    source: 'differences of diameters and depths, by hand',
    kind: 'closed form',
    value: '251.5 - 250 = 1.5 mm; 28.4 - 3 - 2 x 12.7 = 0 mm',
    file: 'can-fit.test.ts',
    test: 'can of %d x %d mm, spacer %d: gap %d, depth left %d',
  },
  {
    figures: ['fit.holeTop', 'fit.sprueDraft'],
    source: 'diameter of a cone at height h: 2 (r - h tan a)',
    kind: 'closed form',
    value: 'r 10, h 12.7, 3 degrees: 18.669 mm',
    file: 'can-fit.test.ts',
    test: 'fit.holeTop and fit.sprueDraft by the tangent',
  },
  {
    figures: ['fit.boltGap'],
    source: 'distance of two circles: of their centers, less both radii',
    kind: 'closed form',
    value: '(30, 40) apart: 50 - 13 / sqrt(3) - 5 mm',
    file: 'can-fit.test.ts',
    test: 'fit.boltGap of a boss: center distance less both radii',
  },
  {
    figures: ['cure.middle', 'cure.face'],
    source:
      'series of a slab whose faces are held at 155 C (Incropera, Cengel): 25 mm, diffusivity 1.1e-7 m2/s, 2700 s',
    kind: 'handbook',
    value: '153.42 C; faces 155 C',
    file: 'cure.test.ts',
    test: 'middle at 153.42 C, faces at once at 155',
  },
  {
    figures: ['cure.gathered', 'cure.gatheredFace', 'cure.share'],
    source: 'Arrhenius over that series, 90 kJ/mol, by hand',
    kind: 'closed form',
    value: '1064.2 s at 155 C; faces 2700 s',
    file: 'cure.test.ts',
    test: 'cured as in 1064.2 s at 155 C',
  },
  {
    figures: ['cure.needed'],
    source: 'the same case turned round',
    kind: 'closed form',
    value: '2700 s for 1064.2 s at 155 C',
    file: 'cure.test.ts',
    test: 'the time that would do for those 1064.2 s is 2700 s',
  },
  {
    figures: ['cure.middle', 'cure.gatheredHot', 'cure.gathered'],
    source: '9 in disc, 160 C, 2 h in a clamped can, cooled in it; worked with the can as a lumped capacity',
    kind: 'common practice, no published source',
    value: '132 C; 4.4 and 28 min at 160 C',
    file: 'cure.test.ts',
    test: 'a 38 mm stack reaches 132 C in 2 h',
  },
  {
    figures: ['cure.middle'],
    source:
      'slab between surroundings: roots and coefficients of Incropera, Table 5.1, and Cengel, Table 4-2',
    kind: 'handbook',
    value: 'Bi 0.01 to infinity, to 1e-4; brass plate 448.24 C (445 in print), steel plate 857.0 s',
    file: 'heat.test.ts',
    test: 'Cengel Table 4-2: first root and coefficient',
  },
  {
    figures: ['pack.can', 'pack.cold', 'pack.excess', 'pack.lock'],
    source: 'volume expansion of rubber 6.6e-4 /K over 135 K; bulk modulus 2 GPa (from memory)',
    kind: 'closed form',
    value: '8.91 % of the rubber; 178.2 MPa where nothing gives',
    file: 'pack.test.ts',
    test: 'a can filled to the brim',
  },
  {
    figures: ['pack.cold', 'pack.excess', 'pack.lock'],
    source: 'rubber round steel nuts, sprue form and tab that fill the can cold; rubber alone swells, 8.91 %',
    kind: 'closed form',
    value: '178.2 MPa; 8.91 % of what is rubber',
    file: 'pack.test.ts',
    test: 'a can filled to the brim, nuts, sprue form and tab in it',
  },
  {
    figures: ['ledger.buildUp'],
    source:
      'a level parting surface 3 mm over the plane under a box far above it: area within a distance of a rectangle',
    kind: 'closed form',
    value: 'integral of a b + 2 (a + b) r + pi r^2 over the height',
    file: 'ledger.test.ts',
    test: 'a build-up on level ground',
  },
  {
    figures: ['ledger.displaced'],
    source: 'box of 10 x 20 x 4 mm, and the same twice as large',
    kind: 'closed form',
    value: '0.8 and 6.4 cm3',
    file: 'pack.test.ts',
    test: 'a master takes the place of its own volume',
  },
  {
    figures: [
      'shot.casting',
      'pressure.surface',
      'pressure.inner',
      'pressure.outer',
      'pressure.gFactor',
      'pressure.detail',
      'pressure.opening',
    ],
    source: 'brick of 1 cm3 at 80 mm fed from an upright well; rotating liquid worked by hand',
    kind: 'closed form',
    value: 'free surface at 12 mm for pi (h^2 / 2 k + (R^2 - r^2) h) of metal in the well',
    file: 'shot.test.ts',
    test: 'found from the shot and the shape of the well',
  },
  {
    figures: ['shot.least', 'shot.most'],
    source: 'paraboloid in an upright well and hole, half of its cylinder',
    kind: 'closed form',
    value: 'pi h^2 / 2 k in the well at least; pi (r^2 (u - k r^2 / 2 + h) + ...) at most',
    file: 'shot.test.ts',
    test: 'least and largest shot',
  },
  {
    figures: ['speed.least', 'speed.most'],
    source: 'Young and Laplace, and the integral of pressure on ring and brick, put in backward',
    kind: 'closed form',
    value: '0.02 mm of detail fills at the least; 30 N over 1.25 opens at the most',
    file: 'shot.test.ts',
    test: 'band of speeds, from the detail that fills to the force that opens',
  },
  {
    figures: ['pressure.inner', 'pressure.outer'],
    source: 'rho omega^2 (r2^2 - r1^2) / 2',
    kind: 'closed form',
    value: '114.961 kPa for 7280 kg/m3, 600 rpm, 10 to 90 mm; 229.291 kPa',
    file: 'turning.test.ts',
    test: 'pressure in turning metal',
  },
  {
    figures: ['pressure.gFactor'],
    source: 'Groover, Fundamentals of Modern Manufacturing, ch. 11, outside diameter 65 cm, 60 g',
    kind: 'handbook',
    value: '406.39 rpm',
    file: 'turning.test.ts',
    test: 'speed for a G-factor, by the outside diameter',
  },
  {
    figures: ['spin.stress', 'spin.rimStress', 'spin.factor', 'spin.burst', 'spin.rimSpeed'],
    source:
      'turning disc with a bore: Timoshenko, Strength of Materials II; Roark, ch. 16; 6061-T6 of 310 MPa',
    kind: 'handbook',
    value: '0.11753 MPa at 600 rpm, radii 10 and 115 mm',
    file: 'spin.test.ts',
    test: 'of aluminum, bore 10, radius 115 mm at 600 rpm',
  },
  {
    figures: ['spin.stress', 'spin.rimStress'],
    source: 'steel disc, bore 50, radius 300 mm, 3000 rpm, recomputed from the formulas of Roark, ch. 16',
    kind: 'handbook',
    value: '57.497 MPa at the bore, 13.713 at the rim',
    file: 'turning.test.ts',
    test: 'steel, bore 50, radius 300 mm at 3000 rpm',
  },
  {
    figures: ['spin.burst'],
    source: 'problem on a cast-iron ring, Shigley: ID 1 in, OD 12 in, 31 ksi; nu and density from memory',
    kind: 'handbook',
    value: '12042 rpm',
    file: 'turning.test.ts',
    test: 'grey iron bursts at 12042 rpm',
  },
];
