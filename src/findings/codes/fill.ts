import { codes } from './entry.ts';
import { notChecked, notSaid } from './not-said.ts';

const air = {
  least: 'mm3',
  /** Left out where it is as much whatever is assumed. */
  'most?': 'mm3',
  /** In the room itself, in a narrow leg, or under the mouth of one. */
  where: ['room', 'leg', 'mouth'],
  /** What shut it in. */
  sealed: ['metal', 'neck', 'gate', 'vent', 'never'],
} as const;

const shutIn =
  '{sealed, select, metal {Metal shuts it in} neck {A narrow place that metal closes shuts it in} gate {It is shut in when metal covers the gate} vent {It is shut in when metal covers the vent} other {It never has a way out}}';
const stands = '{where, select, room {} leg {, in a narrow leg} other {, under the mouth of a narrow leg}}';

const source =
  'quasi-static model held to closed forms and two-phase flow runs (`tests/published/fill`); splash, jets, wetting, talc and the temperature of the mold are not seen';
const formula =
  'air whose last way out is filled before its own cell is, pressed together by Boyle; Bond number rho a R^2 / gamma of narrow places from 1.3 to 5, contact angle 110 to 160 degrees';

/** How cavities fill. */
export const fillCodes = codes({
  'fill.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the filling of the cavities is found from; it is not checked.',
    says: `Filling is ${notSaid}`,
  },
  'fill.air-stays': {
    formula,
    source,
    severity: 'warn',
    means:
      'Air stays in the cavity whatever is assumed about surface tension, wetting and leaks: the casting has a hole there, or stays short.',
    values: air,
    says: `{most, select, none {{least}} other {{least} to {most}}} of air stay in {subject}${stands}. ${shutIn}.`,
    remedy: 'Cut a vent there, or move the gate so that metal comes there last; pour once and look.',
  },
  'fill.air-may-stay': {
    formula,
    source,
    severity: 'note',
    means:
      'Air stays in the cavity under some assumptions about surface tension, wetting and leaks, not under all.',
    values: air,
    says: `{most, select, none {{least}} other {{least} to {most}}} of air may stay in {subject}${stands}. ${shutIn}.`,
    remedy: 'Pour once and look there before a vent is cut.',
  },
  'fill.open-gate-first': {
    formula:
      'Bond number of the gate at the cavity under the limit of a mouth; air within one and two hydraulic diameters of it',
    source: 'two plane two-phase flow runs (`tests/published/fill`); common practice, no published source',
    severity: 'note',
    means:
      'The gate is so narrow that metal backing up in it lets no more air out, and more stays under it than any vent would free.',
    values: { least: 'mm3', most: 'mm3', vent: 'mm3', width: 'mm' },
    says: '{least} to {most} of air stay under the gate of {subject}, more than the {vent} a vent would free.',
    remedy:
      'Open the gate first, to about {width} across at the cavity if there is room; then look for vents.',
  },
  'fill.vent-drains': {
    formula:
      'length that metal runs through the vent, 0.61 of Torricelli in the turning frame, while its superheat lasts in the section (Chvorinov for the superheat alone: grows as the square of volume over surface); over the way to the rim, and deeper than 2 gamma / p',
    source:
      'closed forms; the discharge of a sharp-edged opening is from memory; that superheat alone decides is our own choice, on the side of few findings',
    severity: 'warn',
    means:
      'A vent is so deep and its way to the rim so short that metal is still hot when it comes out: part of the shot runs out, and is thrown off while the mold spins.',
    values: { measured: 'mm', limit: 'mm', depth: 'mm', placement: 'name' },
    says: 'Metal runs hot for {measured} in the vent of {placement}; the rim is {limit} off.',
    remedy:
      'Cut the vent to about {depth} at its deepest or lead it a longer way, and keep the guard of the machine shut while it spins.',
  },
  'fill.large-cells': {
    formula: 'volume of the cavity over so many cells',
    source: 'our own choice, for time and memory',
    severity: 'note',
    means:
      'A cavity would take more cells than the forecast of filling allows, for time and memory: larger ones are taken, and what is thinner than they are is not seen.',
    values: { measured: 'mm', limit: 'mm', count: 'count' },
    says: 'Filling of {subject} is forecast in cells of {measured}, where {limit} is usual: no more than {count, number} fit.',
    remedy: 'Take pockets smaller than a few cells as uncertain.',
  },
  'fill.coarse': {
    formula: 'volume of the cells that metal comes to, over that of the cavity',
    source: 'our own choice',
    severity: 'note',
    means: 'Part of the cavity is thinner than the cells it is filled in: the forecast does not see it.',
    values: { measured: 'ratio', limit: 'ratio', cell: 'mm' },
    says: 'The forecast of filling sees {measured} of {subject}, in cells of {cell}; the rest is thinner.',
    remedy: 'Take thin ends for places that stay short, and pour once.',
  },
});
