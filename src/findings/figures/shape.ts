import type { FigureEntry } from './entry.ts';

/** The mold as it lies: cover, walls, registration, release, support, fit. */
export const shapeFigures = {
  'depth.below': {
    label: 'reaches below the parting surface',
    unit: 'mm',
    means: 'How far a cavity or fixture reaches into the lower half, from the parting surface where it is.',
  },
  'height.above': {
    label: 'reaches above it',
    unit: 'mm',
    means: 'How far a cavity or fixture reaches into the upper half, from the parting surface where it is.',
  },
  'cover.lower': {
    label: 'cover, lower half',
    unit: 'mm',
    means: 'What is left between it and the outer face of the lower half.',
  },
  'cover.upper': {
    label: 'cover, upper half',
    unit: 'mm',
    means: 'What is left between it and the outer face of the upper half.',
  },
  'cover.least': { label: 'least cover of all', unit: 'mm', means: 'Least cover of the whole mold.' },
  'cover.needs-lower': {
    label: 'lower half needs',
    unit: 'mm',
    means: 'Least thickness of the lower half that leaves the cover wanted.',
  },
  'cover.needs-upper': {
    label: 'upper half needs',
    unit: 'mm',
    means: 'Least thickness of the upper half that leaves the cover wanted.',
  },
  'cover.stock-lower': {
    label: 'next stock, lower half',
    unit: 'mm',
    means: 'Least stock thickness of the lower half that leaves the cover wanted, of what drives it.',
  },
  'cover.stock-upper': {
    label: 'next stock, upper half',
    unit: 'mm',
    means: 'Least stock thickness of the upper half that leaves the cover wanted, of what drives it.',
  },
  'cover.parting-lower': {
    label: 'lower half where thinnest',
    unit: 'mm',
    means: 'Thickness of the lower half where the parting surface is lowest.',
  },
  'cover.parting-upper': {
    label: 'upper half where thinnest',
    unit: 'mm',
    means: 'Thickness of the upper half where the parting surface is highest.',
  },
  'walls.least': { label: 'between two cavities', unit: 'mm', means: 'Wall between two cavities.' },
  'walls.boss': { label: 'cavity to boss', unit: 'mm', means: 'Wall between a cavity and a boss.' },
  'walls.well': {
    label: 'cavity to well',
    unit: 'mm',
    means: 'Wall between a cavity and the well or pouring hole.',
  },
  'walls.channel': {
    label: "cavity to another's channel",
    unit: 'mm',
    means: "Wall between a cavity and another's gate or vent.",
  },
  'walls.tab': {
    label: 'cavity to tab or notch',
    unit: 'mm',
    means: 'Wall between a cavity and a tab or notch.',
  },
  'walls.bolt': {
    label: 'cavity to bolt of the can',
    unit: 'mm',
    means: 'Wall between a cavity and a bolt of the can that goes through the disc.',
  },
  'walls.rim': {
    label: 'cavity or boss to rim',
    unit: 'mm',
    means: 'What is left between a cavity or boss and the rim.',
  },
  'registration.falseSeats': {
    label: 'wrong ways to close',
    unit: 'count',
    means: 'Wrong positions in which the halves close, or nearly so.',
  },
  'registration.falseSeat': {
    label: 'misfit in nearest wrong way',
    unit: 'mm',
    means: 'Misfit of the bosses in the nearest wrong position.',
  },
  'registration.falseSeatAngle': {
    label: 'turned by, in that way',
    unit: 'deg',
    means: 'How far the halves are turned in that position.',
  },
  'registration.shift': {
    label: 'sideways play',
    unit: 'mm',
    means: 'How far one half can shift sideways on the other, closed.',
  },
  'registration.turn': {
    label: 'turning play',
    unit: 'deg',
    means: 'How far one half can turn on the other, closed.',
  },
  'registration.mismatch': {
    label: 'step at the parting line',
    unit: 'mm',
    means: 'Largest step that play can leave along a parting line.',
  },
  'undercut.lower': {
    label: 'undercut, lower half',
    unit: 'mm3',
    means: 'What the lower half would have to pass through to be lifted off.',
  },
  'undercut.upper': {
    label: 'undercut, upper half',
    unit: 'mm3',
    means: 'What the upper half would have to pass through to be lifted off.',
  },
  'undercut.depth-lower': {
    label: 'deepest, lower half',
    unit: 'mm',
    means: 'Greatest height of undercut in the lower half.',
  },
  'undercut.depth-upper': {
    label: 'deepest, upper half',
    unit: 'mm',
    means: 'Greatest height of undercut in the upper half.',
  },
  'undercut.share': {
    label: 'undercut, share of cavity',
    unit: 'ratio',
    means: 'Undercut of both halves, of the volume of the cavity.',
  },
  'draft.little': {
    label: 'under 1 degree of draft',
    unit: 'mm2',
    means: 'Area of the cavity with less than 1 degree of draft.',
  },
  'support.slenderness': {
    label: 'slenderness of a free bit',
    unit: 'times',
    means: 'Free length over thickness of the most slender free bit.',
  },
  'support.gap': {
    label: 'gap to the parting plane',
    unit: 'mm',
    means: 'Greatest gap between a slender free bit and the parting plane.',
  },
  'support.free': { label: 'free area', unit: 'mm2', means: 'Area of slender bits with nothing under them.' },
  'support.held': {
    label: 'area held by build-ups',
    unit: 'mm2',
    means: 'Area of slender bits that a build-up holds.',
  },
  'fit.canGap': {
    label: 'can wider than disc by',
    unit: 'mm',
    means: 'How much wider than the disc the can is.',
  },
  'fit.depthLeft': {
    label: 'depth of the can left',
    unit: 'mm',
    means: 'Depth of the can that both halves and the spacers leave empty.',
  },
  'fit.sprueDraft': { label: 'draft of the sprue form', unit: 'deg', means: 'Draft of the sprue form.' },
  'fit.holeTop': {
    label: 'pouring hole at the top',
    unit: 'mm',
    means: 'Diameter of the pouring hole at the outer face of the upper half.',
  },
  'fit.boltGap': {
    label: 'boss or tab to bolts',
    unit: 'mm',
    means: "Distance of a boss or tab from the can's bolts, seen from above.",
  },
} as const satisfies Record<string, FigureEntry>;
