import { codes } from './entry.ts';
import { notChecked, notSaid } from './not-said.ts';

const force =
  'Stand aside while the can is closed and heated, and go by the ratings of clamps, press and bolts as their makers give them.';

/** What pushes the can open, and what is to hold it. */
const against = { measured: 'N', limit: 'N', force: 'N' } as const;
const pushedOpen = 'the can is pushed open with {force}, and a quarter more is wanted: {limit}.';

/** Cure as time at the compound's reference temperature. */
const cured = { measured: 's', limit: 's', reference: 'C' } as const;

/** How much more is in the hot can than it has room for. */
const excess = { measured: 'mm3', limit: 'mm3' } as const;
const room = 'V_rubber (1 + beta dT) + V_masters, bosses, sprue form, tabs, build-ups';
const swelling = "volume expansion; beta from the compound's sheet, else from memory";
const flowsOut = {
  values: excess,
  says: 'Hot, {measured} of rubber are too much for the can and must flow out.',
  formula: `${room} <= V_can`,
  source: swelling,
} as const;

/** Closing the can, what is packed into it, and the cure. */
export const canCodes = codes({
  'spew.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the flow of rubber out of the grooves is found from.',
    says: `How rubber flows out of the grooves is ${notSaid}`,
  },
  'spew.grooves': {
    severity: 'warn',
    means:
      'The grooves are so small that rubber that is too much opens the can rather than flow out in time.',
    values: { measured: 'Pa', limit: 'Pa', 'depth?': 'mm' },
    says: {
      opens:
        'It takes at least {measured} to drive the rubber that is too much out of the grooves before it scorches; the can is closed with {limit}, so it opens.',
      tight:
        'It may take {measured} to drive the rubber that is too much out of the grooves before it scorches; the can is closed with {limit}.',
    },
    remedy: {
      opens:
        'Cut more rubber away, {depth, select, none {or cut more and wider grooves} other {or cut the grooves {depth} deep}}, or close harder if clamps and lids stand it.',
      tight:
        'Cut more rubber away, {depth, select, none {or cut more and wider grooves} other {or cut the grooves {depth} deep}}.',
    },
    formula:
      'flow through a rectangular groove as a fluid of one viscosity and as a plug of one stress, from Mooney units, against `closing.pressure`',
    source: 'White, Viscous Fluid Flow, sec. 3-3; measures of the rotor of ISO 289-1 from memory',
  },
  'closing.not-checked': {
    ...notChecked,
    means:
      'The plan leaves out what the force on the can, its clamps, bolts and lids is found from; that part is not checked.',
    says: `Closing the can is in part ${notSaid}`,
  },
  'closing.bolts-alone': {
    severity: 'stop',
    means:
      'Only bolts hold the can shut. Bolts draw it shut; the load of the cure belongs to clamps, since a bolt that gives way lets go at once.',
    values: { force: 'N' },
    says: 'Bolts alone hold the can against {force}.',
    remedy: `Add clamps that carry the whole force, or cure the can in a press. ${force}`,
    safety: true,
    formula: 'clamps are given',
    source: 'common practice, no published source',
  },
  'closing.unrated': {
    severity: 'stop',
    means: 'Nobody knows what the clamps or the press hold.',
    values: { force: 'N', 'count?': 'count' },
    says: {
      stays: 'The plan does not say whether the can stays under the press, where {force} push it open.',
      press: 'The press is to hold {force}, and the plan does not say what it is rated for.',
      clamps:
        '{count, plural, one {A clamp is} other {# clamps are}} to hold {force}, and the plan does not say what {count, plural, one {it} other {each}} is rated for.',
    },
    remedy: {
      stays: 'Write `cure: in the press` or `cure: out` under `press`.',
      press: `Write the force the press is rated for, as \`force\` under \`press\`. ${force}`,
      clamps: `Write the force each clamp is rated for, as \`force\` under \`clamps\`. ${force}`,
    },
    safety: true,
    formula: 'rated force is given',
    source: 'common practice, no published source',
  },
  'closing.clamps-short': {
    severity: 'stop',
    means:
      'The clamps hold less than the molding pressure on the face of the can, with a quarter to spare, pushes with. Bolts are not counted.',
    values: against,
    says: `The clamps hold {measured}; ${pushedOpen}`,
    remedy: `Take more or stronger clamps, or press with less. ${force}`,
    safety: true,
    formula: 'n F >= 1.25 p pi d^2 / 4',
    source:
      'pressure times area; clamps alone counted is common practice, the quarter to spare is our own choice',
  },
  'closing.press-leaves': {
    severity: 'stop',
    means:
      'The can is closed in a press and taken out for the cure, and no clamps are on it: what heats and swells inside is held by bolts, or by nothing.',
    values: { force: 'N' },
    says: 'The can is taken out of the press for the cure, and no clamps hold it against {force}.',
    remedy: `Leave the can under the closed press until it has cooled, or add clamps that carry the whole force before the press is opened. ${force}`,
    safety: true,
    formula: 'a press holds only while the can is under it; otherwise clamps are given',
    source: 'common practice, no published source',
  },
  'closing.press-short': {
    severity: 'stop',
    means:
      'The press is rated for less than the molding pressure on the face of the can, with a quarter to spare, pushes with.',
    values: against,
    says: `The press holds {measured}; ${pushedOpen}`,
    remedy: `Press with less, or take a stronger press. ${force}`,
    safety: true,
    formula: 'F >= 1.25 p pi d^2 / 4',
    source: "pressure times area; rating by the press's maker; the quarter to spare is our own choice",
  },
  'closing.bolt-unknown': {
    severity: 'stop',
    means: 'The table of proof loads has no such bolt, so nobody knows what it bears.',
    values: { size: 'name', grade: 'name' },
    says: 'The table has no proof load for bolts {size} of {grade}.',
    remedy: `Take a coarse-threaded bolt of a known class or grade, such as M10 8.8 or 3/8 grade 5. ${force}`,
    safety: true,
    formula: 'size and grade are in the table',
    source: 'ISO 898-1 and SAE J429, coarse threads',
  },
  'closing.bolt-tension': {
    severity: 'stop',
    means: 'The bolts are tightened past their proof load, from where on they stretch for good.',
    values: { measured: 'N', limit: 'N' },
    says: 'Each bolt is tightened to {measured}; its proof load is {limit}.',
    remedy: `Tighten less, or take stronger bolts. ${force}`,
    safety: true,
    formula: 'F <= proof load',
    source: 'ISO 898-1 and SAE J429, coarse threads',
  },
  'closing.bolts-past-proof': {
    severity: 'stop',
    means:
      'The drawing bolts are left in under the clamps, and the load that may come to them stretches them for good. They share it with the clamps by stiffness; how stiff clamps are is not known, so they must be able to take all of it.',
    /** On one bolt, with what it is tightened to; its proof load, and how much of that it is. */
    values: { measured: 'N', limit: 'N', share: 'ratio', count: 'count' },
    says: 'Left in under the clamps, {count, plural, one {the bolt} other {each of # bolts}} may come to bear {measured}, {share} of the proof load of {limit}.',
    remedy: `Take the bolts out once the clamps are on and write \`cure: taken out\` under \`bolts\`, or take more or stronger bolts. ${force}`,
    safety: true,
    formula: 'F_bolt + p pi d^2 / 4 / n <= proof load',
    source:
      "ISO 898-1 and SAE J429, coarse threads; load on a bolted joint as in Shigley, Mechanical Engineering Design, with the bolts' share at its bound of one",
  },
  'closing.lid-unknown': {
    severity: 'stop',
    means: 'The strength of the lids at the temperature of the cure is not known.',
    values: { material: 'name', 'cure?': 'C' },
    says: {
      metal: 'Nothing is known of lids of {material}.',
      hole: 'The hole in the lid of {material} is as wide as the can: nothing of it is pressed on.',
      yield:
        'The yield strength of {material} at {cure, select, none {the temperature of the cure} other {{cure}}} is not known.',
    },
    remedy: `Write \`yield\` and a metal of the table under \`lid\`, as the metal's sheet gives them. ${force}`,
    safety: true,
    formula: 'yield strength at the temperature of the cure is known',
    source: 'table of lid metals; a blank stops',
  },
  'closing.wall-unknown': {
    severity: 'stop',
    means: 'The strength of the wall of the can at the temperature of the cure is not known.',
    values: { material: 'name', 'cure?': 'C' },
    says: 'Nothing is known of the yield strength of a can of {material} at {cure, select, none {the temperature of the cure} other {{cure}}}.',
    remedy: `Name a metal of the table as \`material\` under \`can\`, such as steel, and the heat of the cure. ${force}`,
    safety: true,
    formula: 'yield strength at the temperature of the cure is known',
    source: 'table of lid metals; a blank stops',
  },
  'closing.wall-stress': {
    severity: 'stop',
    means: 'The molding pressure strains the wall of the can past two thirds of its yield strength.',
    values: { measured: 'Pa', limit: 'Pa', wall: 'mm', yield: 'Pa' },
    says: 'A wall of {wall} is strained to {measured} where {limit} is allowed, two thirds of its yield strength of {yield}.',
    remedy: `Take a can with a thicker wall, or press with less. ${force}`,
    safety: true,
    formula: '2 p r_o^2 / (r_o^2 - r_i^2) <= yield / 1.5',
    source:
      'Lame, thick tube under pressure from within, yielding by Tresca (Timoshenko; Shigley 3-14); the factor 1.5 is our own choice',
  },
  'closing.lid-stress': {
    severity: 'stop',
    means:
      'The molding pressure bends the lids past two thirds of their yield strength. They are taken as held on the circle of clamps or bolts only, the upper one with the hole that the sprue form stands through.',
    /** Thickness of the lid there is, its yield strength, and the thickness that would do. */
    values: { measured: 'Pa', limit: 'Pa', thickness: 'mm', yield: 'Pa', needed: 'mm', 'hole?': 'mm' },
    says: 'A lid of {thickness}{hole, select, none {} other { with a hole of {hole}}} is bent to {measured} where {limit} is allowed, two thirds of its yield strength of {yield}.',
    remedy: `Take lids of at least {needed}. ${force}`,
    safety: true,
    formula: '6 M / t^2 <= yield / 1.5, M at the edge of the hole or in the middle',
    source:
      "Roark's Formulas for Stress and Strain, table 11.2, cases 1a, 2a and 10a, simply supported; the factor 1.5 is our own choice",
  },
  'cure.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the cure is found from; that part is not checked.',
    says: {
      heating: `Cure is ${notSaid}`,
      compound: `How far the cure goes is ${notSaid}`,
      cooling: `Cooling in the can is not counted toward the cure, and ${notSaid}`,
      overcure: `Whether the faces cure too long is ${notSaid}`,
    },
  },
  'cure.not-heating': {
    severity: 'stop',
    means: 'The can is put to a temperature it already has, or a lower one.',
    values: { measured: 'C', limit: 'C' },
    says: 'The can starts at {limit} and is put to {measured}: that heats nothing.',
    formula: 'temperature of the cure against the one at the start; must be higher',
    source: 'heat flows from warm to cold',
    remedy: 'Correct `temperature` or `start` under `cure`.',
  },
  'cure.out-of-range': {
    severity: 'stop',
    means: "The temperature lies outside the range in which the compound's maker says it cures.",
    values: { measured: 'C', limit: 'C', side: ['under', 'over'] },
    says: '{measured} is {side} the {limit} that the maker of the compound gives.',
    formula: 'temperature of the cure against `rubber.cureFrom` and `rubber.cureTo`',
    source: "the compound's sheet, as the plan gives it",
    remedy: "Cure within the range on the compound's sheet.",
  },
  'cure.short': {
    severity: 'stop',
    means:
      'The middle of the stack gathers less cure than 90 %: it stays soft or porous. Cooling in the can is counted where its time constant is given.',
    /** Time of heating that would do, where a week does. */
    values: { ...cured, 'needed?': 's' },
    says: 'The middle gathers {measured} at {reference}, of the {limit} to 90 % cure.',
    remedy:
      '{needed, select, none {At this temperature a week would not do: heat the can hotter.} other {Heat it for {needed}, or hotter within the range of the compound.}}',
    formula:
      'integral of exp(-E/R (1/T - 1/T_ref)) dt >= t90, T in the middle of a slab heated from both faces through lids and contact',
    source:
      "exact series of slab conduction (Incropera; Cengel), Arrhenius; t90 and E from the compound's sheet",
  },
  'cure.over': {
    severity: 'warn',
    means: 'The faces gather more cure than the compound stands: they turn soft or brittle.',
    values: cured,
    says: 'The faces gather {measured} at {reference}; the compound stands {limit}.',
    remedy: 'Heat it for less time, or less hot for longer.',
    formula: 'integral of exp(-E/R (1/T - 1/T_ref)) dt at the faces <= the time on the sheet',
    source: "Arrhenius; limit and E from the compound's sheet",
  },
  'pack.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the room in the can is found from; it is not checked.',
    says: `What is packed into the can is ${notSaid}`,
  },
  'pack.locked': {
    severity: 'stop',
    means:
      'Hot rubber takes up more room than the can has, and cannot flow out. It hardly lets itself be squeezed: lids, clamps or bolts give way.',
    values: excess,
    says: 'Hot, there are up to {measured} too much and no way out: no lid, clamp or bolt holds rubber that has no room.',
    remedy: `Cut rubber away, or cut spew grooves and write \`spew: open\` under \`can\`. ${force}`,
    safety: true,
    formula: flowsOut.formula,
    source: 'volume expansion, the largest of what is known of the compound',
  },
  'pack.way-out': {
    severity: 'warn',
    means:
      'Hot rubber takes up more room than the can has, and the plan does not say whether it can flow out.',
    ...flowsOut,
    remedy: `Cut rubber away, or see that it can flow out and write \`spew: open\` under \`can\`. ${force}`,
  },
  'pack.flows-out': {
    severity: 'note',
    means: 'Hot rubber takes up more room than the can has; the rest flows out.',
    ...flowsOut,
    remedy: 'Keep the grooves clear; cut more rubber away if less is to flow out.',
  },
  'pack.short': {
    severity: 'warn',
    means:
      'Even hot the rubber may not fill the can, if it swells as little as is known of it: it is not pressed, and stays porous.',
    values: { ...excess, empty: 'mm3' },
    says: 'Hot, up to {empty} of the can stay empty: no pressure builds up.',
    formula: `${room} >= V_can`,
    source: swelling,
    remedy: 'Lay in more rubber, or a thicker spacer.',
  },
});
