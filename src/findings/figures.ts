import type { Unit } from './finding.ts';

/** What is known of a figure beforehand. */
export interface FigureEntry {
  readonly unit: Unit;
  readonly means: string;
}

/**
 * Every figure a report may hold, one line each. A figure of another name is a type error; each needs a row in
 * `tests/published/outside-checks.ts` that says what outside the project its computation is held to.
 */
export const figureCatalogue = {
  'depth.below': { unit: 'mm', means: 'How far a cavity or fixture reaches into the lower half.' },
  'height.above': { unit: 'mm', means: 'How far a cavity or fixture reaches into the upper half.' },
  'cover.lower': { unit: 'mm', means: 'What is left between it and the outer face of the lower half.' },
  'cover.upper': { unit: 'mm', means: 'What is left between it and the outer face of the upper half.' },
  'cover.least': { unit: 'mm', means: 'Least cover of the whole mold.' },
  'cover.needs-lower': {
    unit: 'mm',
    means: 'Least thickness of the lower half that leaves the cover wanted.',
  },
  'cover.needs-upper': {
    unit: 'mm',
    means: 'Least thickness of the upper half that leaves the cover wanted.',
  },
  'cover.stock-lower': {
    unit: 'mm',
    means: 'Least stock thickness of the lower half that leaves the cover wanted, of what drives it.',
  },
  'cover.stock-upper': {
    unit: 'mm',
    means: 'Least stock thickness of the upper half that leaves the cover wanted, of what drives it.',
  },
  'cover.parting-lower': {
    unit: 'mm',
    means: 'Thickness of the lower half where the parting surface is lowest.',
  },
  'cover.parting-upper': {
    unit: 'mm',
    means: 'Thickness of the upper half where the parting surface is highest.',
  },
  'walls.least': { unit: 'mm', means: 'Wall between two cavities.' },
  'walls.boss': { unit: 'mm', means: 'Wall between a cavity and a boss.' },
  'walls.well': { unit: 'mm', means: 'Wall between a cavity and the well or pouring hole.' },
  'walls.channel': { unit: 'mm', means: "Wall between a cavity and another's gate or vent." },
  'walls.tab': { unit: 'mm', means: 'Wall between a cavity and a tab or notch.' },
  'walls.rim': { unit: 'mm', means: 'What is left between a cavity or boss and the rim.' },
  'registration.falseSeats': {
    unit: 'count',
    means: 'Wrong positions in which the halves close, or nearly so.',
  },
  'registration.falseSeat': { unit: 'mm', means: 'Misfit of the bosses in the nearest wrong position.' },
  'registration.falseSeatAngle': { unit: 'deg', means: 'How far the halves are turned in that position.' },
  'registration.shift': { unit: 'mm', means: 'How far one half can shift sideways on the other, closed.' },
  'registration.turn': { unit: 'deg', means: 'How far one half can turn on the other, closed.' },
  'registration.mismatch': { unit: 'mm', means: 'Largest step that play can leave along a parting line.' },
  'undercut.lower': {
    unit: 'mm3',
    means: 'What the lower half would have to pass through to be lifted off.',
  },
  'undercut.upper': {
    unit: 'mm3',
    means: 'What the upper half would have to pass through to be lifted off.',
  },
  'undercut.depth-lower': { unit: 'mm', means: 'Greatest height of undercut in the lower half.' },
  'undercut.depth-upper': { unit: 'mm', means: 'Greatest height of undercut in the upper half.' },
  'undercut.share': { unit: 'ratio', means: 'Undercut of both halves, of the volume of the cavity.' },
  'draft.little': { unit: 'mm2', means: 'Area of the cavity with less than 1 degree of draft.' },
  'support.slenderness': { unit: 'times', means: 'Free length over thickness of the most slender free bit.' },
  'support.gap': { unit: 'mm', means: 'Greatest gap between a slender free bit and the parting plane.' },
  'support.free': { unit: 'mm2', means: 'Area of slender bits with nothing under them.' },
  'support.held': { unit: 'mm2', means: 'Area of slender bits that a build-up holds.' },
  'closing.force': { unit: 'N', means: 'Force with which the rubber pushes the can open.' },
  'closing.held': { unit: 'N', means: 'Force the clamps are rated to hold together.' },
  'closing.boltProof': {
    unit: 'N',
    means: 'Proof load of one drawing bolt; bolts are not counted as holding.',
  },
  'closing.boltShare': { unit: 'ratio', means: "Share of all bolts' proof load, were the clamps to let go." },
  'closing.lidStress': { unit: 'Pa', means: 'Greatest bending stress in a lid.' },
  'closing.lidBow': { unit: 'mm', means: 'How far the middle of a lid bows outward.' },
  'heat.limit': {
    unit: 'C',
    means: 'Highest temperature a fixture or master is trusted to stand in the can.',
  },
  'heat.halfLimit': { unit: 'C', means: 'Highest pouring temperature the halves are trusted to stand.' },
  'balance.static': { unit: 'g.mm', means: 'How far the filled mold is out of balance.' },
  'balance.angle': { unit: 'deg', means: 'Where its heavy side is, counter-clockwise from the index mark.' },
  'balance.lower': { unit: 'g.mm', means: 'Unbalance carried to the outer face of the lower half.' },
  'balance.upper': { unit: 'g.mm', means: 'Unbalance carried to the outer face of the upper half.' },
  'balance.permissible': { unit: 'g.mm', means: 'Unbalance the grade allows at the speed of the plan.' },
  'balance.rotor': { unit: 'kg', means: 'Mass of all that turns, plates included.' },
  'balance.misrun': { unit: 'g.mm', means: 'Unbalance with the worst cavity left empty.' },
  'balance.correction': { unit: 'g', means: 'Mass at the rim, opposite the heavy side, that puts it right.' },
  'fit.canGap': { unit: 'mm', means: 'How much wider than the disc the can is.' },
  'fit.depthLeft': { unit: 'mm', means: 'Depth of the can that both halves and the spacers leave empty.' },
  'fit.sprueDraft': { unit: 'deg', means: 'Draft of the sprue form.' },
  'fit.holeTop': { unit: 'mm', means: 'Diameter of the pouring hole at the outer face of the upper half.' },
  'fit.boltGap': { unit: 'mm', means: "Distance of a boss or tab from the can's bolts, seen from above." },
  'cure.middle': { unit: 'C', means: 'Temperature in the middle of the stack when heating ends.' },
  'cure.face': { unit: 'C', means: 'Temperature of its faces when heating ends.' },
  'cure.gatheredHot': {
    unit: 's',
    means: "Cure in the middle when heating ends, as time at the compound's reference temperature.",
  },
  'cure.gathered': { unit: 's', means: 'The same with cooling in the can.' },
  'cure.share': { unit: 'ratio', means: 'Cure gathered in the middle, of the t90 of the compound.' },
  'cure.gatheredFace': { unit: 's', means: 'Cure gathered at the faces, cooling in the can included.' },
  'cure.needed': { unit: 's', means: 'Least time of heating with which the middle reaches t90.' },
  'ledger.displaced': { unit: 'mm3', means: 'Rubber that a master takes the place of.' },
  'pack.can': { unit: 'mm3', means: 'Room in the can.' },
  'pack.cold': { unit: 'mm3', means: 'Rubber, masters, bosses and sprue form laid in, cold.' },
  'pack.excess': { unit: 'mm3', means: 'What they take up more than the can has, hot.' },
  'pack.lock': { unit: 'Pa', means: 'Pressure that a can would have to bear which lets none of it out.' },
  'shot.casting': { unit: 'g', means: 'Mass of one casting.' },
  'shot.least': { unit: 'g', means: 'Least shot that fills cavities and gates out to the edge of the well.' },
  'shot.most': { unit: 'g', means: 'Largest shot that does not climb out of the pouring hole.' },
  'pressure.inner': { unit: 'Pa', means: 'Pressure of the metal at the end of a cavity nearest the axis.' },
  'pressure.outer': {
    unit: 'Pa',
    means: 'Pressure of the metal at the end of a cavity farthest from the axis.',
  },
  'pressure.gFactor': {
    unit: 'times',
    means: 'How many times gravity the metal is pressed outward with there.',
  },
  'pressure.detail': {
    unit: 'mm',
    means: 'Radius of the finest rounded detail that fills at the inner end.',
  },
  'pressure.surface': {
    unit: 'mm',
    means: 'Radius of the free surface in the parting plane; 0 where metal covers the axis.',
  },
  'pressure.opening': { unit: 'N', means: 'Force with which the metal pushes the halves apart.' },
  'speed.least': {
    unit: 'rpm',
    means: 'Speed from which on the finest detail of the plan fills everywhere.',
  },
  'speed.most': { unit: 'rpm', means: 'Speed up to which the machine keeps the mold shut, and may turn.' },
  'spin.rimSpeed': { unit: 'm/s', means: 'Speed of the rim.' },
  'spin.stress': { unit: 'Pa', means: 'Greatest stress that turning puts into rigid halves.' },
  'spin.rimStress': { unit: 'Pa', means: 'Stress along the rim of rigid halves.' },
  'spin.factor': { unit: 'times', means: 'Tensile strength of rigid halves over their greatest stress.' },
  'spin.burst': { unit: 'rpm', means: 'Speed at which rigid halves fly apart, by the formula.' },
} as const satisfies Record<string, FigureEntry>;

export type FigureName = keyof typeof figureCatalogue;
