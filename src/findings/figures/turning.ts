import type { FigureEntry } from './entry.ts';

/** The mold as it turns: balance, shot and pressure, speed. */
export const turningFigures = {
  'balance.static': {
    label: 'out of balance',
    unit: 'g.mm',
    means: 'How far the filled mold is out of balance.',
  },
  'balance.angle': {
    label: 'heavy side at',
    unit: 'deg',
    means: 'Where its heavy side is, counter-clockwise from the index mark.',
  },
  'balance.lower': {
    label: 'of it, at the lower face',
    unit: 'g.mm',
    means: 'Unbalance carried to the outer face of the lower half.',
  },
  'balance.upper': {
    label: 'of it, at the upper face',
    unit: 'g.mm',
    means: 'Unbalance carried to the outer face of the upper half.',
  },
  'balance.permissible': {
    label: 'the grade allows',
    unit: 'g.mm',
    means: 'Unbalance the grade allows at the speed of the plan.',
  },
  'balance.rotor': {
    label: 'mass of all that turns',
    unit: 'kg',
    means: 'Mass of all that turns, plates included.',
  },
  'balance.misrun': {
    label: 'with the worst misrun',
    unit: 'g.mm',
    means: 'Unbalance with the worst cavity left empty.',
  },
  'balance.empty': {
    label: 'the same, empty',
    unit: 'g.mm',
    means: 'How far the mold is out of balance as it spins up, before metal is in it.',
  },
  'balance.added': {
    label: 'by plates and centering',
    unit: 'g.mm',
    means: 'What plates out of balance and a mold off the axis add to it at worst.',
  },
  'balance.true': {
    label: 'may sit off the axis by',
    unit: 'mm',
    means: 'How far off the axis the mold may sit, full and empty, before the grade is used up.',
  },
  'balance.correction': {
    label: 'correcting mass at the rim',
    unit: 'g',
    means: 'Mass at the rim, opposite the heavy side, that puts it right.',
  },
  'shot.casting': { label: 'mass of one casting', unit: 'g', means: 'Mass of one casting.' },
  'shot.least': {
    label: 'least shot',
    unit: 'g',
    means: 'Least shot that fills cavities and gates out to the edge of the well.',
  },
  'shot.most': {
    label: 'largest shot',
    unit: 'g',
    means: 'Largest shot that does not climb out of the pouring hole.',
  },
  'shot.poured': { label: 'shot', unit: 'g', means: 'The shot, as the plan weighs it or by its rule.' },
  'pressure.inner': {
    label: 'pressure, inner end',
    unit: 'Pa',
    means: 'Pressure of the metal at the end of a cavity nearest the axis.',
  },
  'pressure.outer': {
    label: 'pressure, outer end',
    unit: 'Pa',
    means: 'Pressure of the metal at the end of a cavity farthest from the axis.',
  },
  'pressure.gFactor': {
    label: 'times gravity, outer end',
    unit: 'times',
    means: 'How many times gravity the metal is pressed outward with there.',
  },
  'pressure.detail': {
    label: 'finest radius that fills',
    unit: 'mm',
    means: 'Radius of the finest rounded detail that fills at the inner end.',
  },
  'pressure.surface': {
    label: 'free surface, radius',
    unit: 'mm',
    means: 'Radius of the free surface in the parting plane; 0 where metal covers the axis.',
  },
  'pressure.opening': {
    label: 'force that opens the halves',
    unit: 'N',
    means: 'Force with which the metal pushes the halves apart.',
  },
  'speed.least': {
    label: 'least speed',
    unit: 'rpm',
    means:
      'Speed from which on the metal is pressed into the finest detail of the plan at every cavity (Laplace). It covers that alone: not whether metal sets on the way, nor how soon a cavity is full.',
  },
  'speed.most': {
    label: 'highest speed',
    unit: 'rpm',
    means:
      'Speed up to which none of the known limits is passed: of the machine, its closing force, the shot, rigid halves, the grade of balance.',
  },
  'speed.machine': { label: 'the machine may turn', unit: 'rpm', means: 'Speed the machine may turn at.' },
  'speed.spills': {
    label: 'the shot climbs out',
    unit: 'rpm',
    means: 'Speed from which on the shot climbs out of the pouring hole.',
  },
  'speed.opens': {
    label: 'metal opens the halves',
    unit: 'rpm',
    means: 'Speed from which on metal pushes harder, with a quarter to spare, than the machine holds.',
  },
  'speed.strains': {
    label: 'rigid halves are strained',
    unit: 'rpm',
    means: 'Speed from which on rigid halves have less than four times the strength of their stress.',
  },
  'speed.grade': {
    label: 'the grade of balance ends',
    unit: 'rpm',
    means: 'Speed from which on the mold, full or empty, is further out of balance than its grade allows.',
  },
  'spin.rimSpeed': { label: 'speed of the rim', unit: 'm/s', means: 'Speed of the rim.' },
  'spin.plate': {
    label: 'plate beyond the cavities',
    unit: 'mm',
    means: 'How far the pressing plate reaches out beyond the outermost cavity.',
  },
  'spin.stress': {
    label: 'stress in rigid halves',
    unit: 'Pa',
    means: 'Greatest stress that turning puts into rigid halves.',
  },
  'spin.rimStress': {
    label: 'stress along their rim',
    unit: 'Pa',
    means: 'Stress along the rim of rigid halves.',
  },
  'spin.factor': {
    label: 'strength over stress',
    unit: 'times',
    means: 'Tensile strength of rigid halves over their greatest stress.',
  },
  'spin.burst': {
    label: 'burst speed',
    unit: 'rpm',
    means: 'Speed at which rigid halves fly apart, by the formula.',
  },
  'flash.force': {
    label: 'opens, metal out to the rim',
    unit: 'N',
    means: 'Force that opens the mold once metal is between the halves out to the rim.',
  },
  'flash.gap': {
    label: 'it then gapes',
    unit: 'mm',
    means: 'How far the halves then stand apart, by the stiffness of the closing.',
  },
  'squeeze.least': {
    label: 'squeezed at least',
    unit: 'ratio',
    means: 'How much the closing force squeezes the halves where they cannot slide on the plates.',
  },
  'squeeze.most': {
    label: 'squeezed at most',
    unit: 'ratio',
    means: 'How much the closing force squeezes the halves where they slide freely.',
  },
  'squeeze.mold': {
    label: 'the mold thinner by',
    unit: 'mm',
    means: 'What both halves together then lose in thickness, at most.',
  },
  'squeeze.cover': {
    label: 'cover then left',
    unit: 'mm',
    means: 'Rubber then left over the cavity that comes nearest to an outer face.',
  },
  'squeeze.part': {
    label: 'a casting thinner by',
    unit: 'mm',
    means: 'What the tallest casting may come out thinner by.',
  },
} as const satisfies Record<string, FigureEntry>;
