import type { FigureEntry } from './entry.ts';

/** The can: closing, packing, cure, heat. */
export const canFigures = {
  'closing.force': {
    label: 'force that opens the can',
    unit: 'N',
    means: 'Force with which the rubber pushes the can open.',
  },
  'closing.held': {
    label: 'held by clamps or press',
    unit: 'N',
    means: 'Force the clamps together, or the press, are rated to hold.',
  },
  'closing.clamps': {
    label: 'clamps',
    unit: 'count',
    means: 'Clamps on the can, as the plan counts them or as many as are needed.',
  },
  'closing.boltProof': {
    label: 'proof load of one bolt',
    unit: 'N',
    means: 'Proof load of one drawing bolt; bolts are not counted as holding.',
  },
  'closing.boltShare': {
    label: 'share of bolts, clamps gone',
    unit: 'ratio',
    means: "Share of all bolts' proof load, were the clamps to let go.",
  },
  'closing.boltLoad': {
    label: 'a bolt may bear',
    unit: 'N',
    means:
      'What one drawing bolt may come to bear under the clamps: what it is tightened to, and its part of the force that opens the can as if there were no clamps.',
  },
  'closing.boltPreload': {
    label: 'tighten a bolt to',
    unit: 'N',
    means:
      'Force one drawing bolt is tightened to: as the plan says, or the most it may be. Its proof load is what it stands, not what it pulls.',
  },
  'closing.boltTorqueLeast': {
    label: 'torque for that, slippery',
    unit: 'N.m',
    means:
      'Torque that gives this force where threads slip well (anti-seize): with no more than this it is never tighter. Dry threads may give less than half the force.',
  },
  'closing.boltTorqueMost': {
    label: 'torque for that, dry',
    unit: 'N.m',
    means:
      'Torque that gives this force where threads are black and dry; the same torque on slippery ones pulls two and a half times as hard.',
  },
  'closing.clampPreload': {
    label: 'tighten a clamp to',
    unit: 'N',
    means:
      'Force each clamp must be tightened to, with a quarter to spare. Its rating is what it may bear, not what it pulls.',
  },
  'closing.clampTorqueLeast': {
    label: 'torque for that, slippery',
    unit: 'N.m',
    means: 'Torque on the screw of a clamp that gives this force where the thread slips well (anti-seize).',
  },
  'closing.clampTorqueMost': {
    label: 'torque for that, dry',
    unit: 'N.m',
    means:
      'Torque that gives this force where the thread is black and dry: a clamp whose friction nobody knows needs it, if its rating stands what a slippery one then pulls.',
  },
  'closing.lidHeldOn': {
    label: 'lids held on a circle of',
    unit: 'mm',
    means: 'Diameter of the circle the lids are held on: the widest of clamps, bolts and can.',
  },
  'closing.sprueForce': {
    label: 'drives the sprue form out',
    unit: 'N',
    means:
      'Force with which the rubber drives the sprue form out through the hole in the lid; something over the hole must hold it.',
  },
  'closing.bolts': {
    label: 'drawing bolts',
    unit: 'count',
    means: 'Bolts that draw the can shut, as the plan counts them or spaces them.',
  },
  'closing.lid': {
    label: 'thinnest lid',
    unit: 'mm',
    means: 'Thickness of the thinnest plate that closes the can.',
  },
  'closing.lidStress': { label: 'stress in a lid', unit: 'Pa', means: 'Greatest bending stress in a lid.' },
  'closing.lidBow': { label: 'bow of a lid', unit: 'mm', means: 'How far the middle of a lid bows outward.' },
  'fit.lidHoleMost': {
    label: 'widest hole in the lid',
    unit: 'mm',
    means: 'Widest hole in the lid that still catches the taper of the sprue form.',
  },
  'closing.wallHoop': {
    label: 'hoop stress, can wall',
    unit: 'Pa',
    means: 'Stress along the hoop at the bore of the can.',
  },
  'closing.wallStress': {
    label: 'stress difference there',
    unit: 'Pa',
    means: 'Stress along the hoop less that across the wall, by which the can yields.',
  },
  'heat.superheat': {
    label: 'superheat of the metal',
    unit: 'K',
    means: 'How far over its liquidus the metal is poured.',
  },
  'heat.limit': {
    label: 'a fixture or master stands',
    unit: 'C',
    means: 'Highest temperature a fixture or master is trusted to stand in the can.',
  },
  'heat.halfLimit': {
    label: 'the halves stand',
    unit: 'C',
    means: 'Highest pouring temperature the halves are trusted to stand.',
  },
  'heat.growth': {
    label: 'larger in the hot can',
    unit: 'ratio',
    means:
      'How much longer than cold a fixture or master of your own material is in the cure; its imprint is as large.',
  },
  'cure.middle': {
    label: 'middle when heating ends',
    unit: 'C',
    means: 'Temperature in the middle of the stack when heating ends.',
  },
  'cure.face': {
    label: 'faces when heating ends',
    unit: 'C',
    means: 'Temperature of its faces when heating ends.',
  },
  'cure.gatheredHot': {
    label: 'cure in the middle, heated',
    unit: 's',
    means: "Cure in the middle when heating ends, as time at the compound's reference temperature.",
  },
  'cure.gathered': { label: 'the same, cooled', unit: 's', means: 'The same with cooling in the can.' },
  'cure.fromCooling': {
    label: 'of it owed to cooling',
    unit: 'ratio',
    means: 'Share of the cure in the middle that is gathered only while the can cools.',
  },
  'cure.share': {
    label: 'share of t90, middle',
    unit: 'ratio',
    means: 'Cure gathered in the middle, of the t90 of the compound.',
  },
  'cure.gatheredFace': {
    label: 'cure at the faces',
    unit: 's',
    means: 'Cure gathered at the faces, cooling in the can included.',
  },
  'cure.needed': {
    label: 'least time of heating',
    unit: 's',
    means: 'Least time of heating with which the middle reaches t90.',
  },
  'ledger.blank': {
    label: 'blank of a half',
    unit: 'mm3',
    means: 'Rubber of a half as it is cut from stock, a full disc.',
  },
  'ledger.blankMass': {
    label: 'the same, weighed',
    unit: 'kg',
    means: 'What the rubber of a half weighs as it is cut from stock.',
  },
  'ledger.displaced': {
    label: 'displaced by a master',
    unit: 'mm3',
    means: 'Rubber that a master takes the place of.',
  },
  'ledger.buildUp': {
    label: 'needed at a build-up',
    unit: 'mm3',
    means: 'What a build-up fills: a fixture, or rubber cut to its outline.',
  },
  'pack.can': { label: 'room in the can', unit: 'mm3', means: 'Room in the can.' },
  'pack.laidIn': {
    label: 'rubber to lay in',
    unit: 'kg',
    means: 'Raw rubber laid into the can, both halves, after all cutting away.',
  },
  'pack.cold': {
    label: 'laid in, cold',
    unit: 'mm3',
    means: 'Rubber, masters, bosses, sprue form, tabs and build-ups laid in, cold.',
  },
  'pack.excess': {
    label: 'too much when hot',
    unit: 'mm3',
    means: 'What they take up more than the can has, hot.',
  },
  'pack.lock': {
    label: 'pressure if held in',
    unit: 'Pa',
    means: 'Pressure that a can would have to bear which lets none of it out.',
  },
  'ledger.leftover': {
    label: 'rubber left over',
    unit: 'g',
    means: 'Rubber cut away where the masters lie, all together.',
  },
  'spew.least': {
    label: 'out of the grooves, least',
    unit: 'Pa',
    means: 'Pressure that drives out in time what is too much for the hot can, at the least.',
  },
  'spew.most': {
    label: 'out of the grooves, most',
    unit: 'Pa',
    means: 'Pressure that drives out in time what is too much for the hot can, at the most.',
  },
  'spew.depth': {
    label: 'grooves at least deep',
    unit: 'mm',
    means: 'Depth of the grooves at which the closing pressure drives it out even at the most.',
  },
} as const satisfies Record<string, FigureEntry>;
