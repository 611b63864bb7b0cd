import { codes } from './entry.ts';
import { notChecked, notSaid } from './not-said.ts';

const burns =
  'Hot metal and hot presses burn: wear eye, hand and body protection, and keep water away from molten metal.';

/** The way from a print to a former that stands the can. Common practice, no published source. */
const formerFromPrint =
  'print each larger by the shrink of the metal, mold it in silicone that cures cold, cast it in a metal that melts well above the cure, dress it to size, and try it in the cold can before any rubber goes in.';

/** What is heated, and what it is of. */
const heated = {
  thing: ['sprue', 'buildUp', 'tab', 'boss', 'master', 'spacer', 'collar', 'stop'],
  material: 'name',
} as const;
const what =
  '{thing, select, sprue {The sprue form} buildUp {The build-up under {subject}} spacer {The can spacer} collar {The centering collar} stop {The thickness stop} other {The {thing} {subject}}}';
const noFigure =
  'The halves are of {material}, and no figure at hand says whether that stands metal at {pour}.';
const knownHalves =
  'Make the halves of a material the table has a figure for, such as aluminum or steel, or give its data sheet under `materials`.';
const halvesStand = 'halves of {material, select, none {this rubber} other {{material}}} stand {limit}.';
const soft = {
  values: { ...heated, measured: 'C', limit: 'C' },
  says: `${what} is of {material}, which stands {limit}; the can is heated to {measured}.`,
  formula:
    'temperature of the cure against the deflection temperature at 1.8 MPa less 10 K (metals: solidus less 20 K, or where they soften for good)',
  source:
    'tables of printing materials and of alloys, each row with its source; the margin is our own choice',
} as const;

/** Heat and materials. */
export const heatCodes = codes({
  'heat.not-checked': {
    ...notChecked,
    means:
      'The plan leaves out what the heat on fixtures, masters or halves is judged from; that part is not checked.',
    says: {
      cure: `What the cure does to fixtures and masters is ${notSaid}`,
      metal: `Whether the halves stand the metal is ${notSaid}`,
      superheat: `Whether the metal is hot enough to pour is ${notSaid}`,
    },
  },
  'heat.fixture-soft': {
    severity: 'stop',
    means:
      'A fixture goes into the can and softens in the cure: under the molding pressure it is crushed, and the rubber cures round what is left.',
    ...soft,
    remedy: `Make it of metal that stands the cure, such as aluminum, brass or steel. ${burns}`,
    safety: true,
  },
  'heat.former-soft': {
    severity: 'warn',
    means:
      'What goes into the can with raw rubber is of a plastic that no usual cure leaves whole, and the plan does not say how hot the can gets.',
    values: { names: 'names', material: 'name', measured: 'C', 'limit?': 'C' },
    says: 'What lies in the hot can is of {material}, {limit, select, none {of which no trusted figure says what heat it stands} other {which stands {limit}}}: {names}. Raw rubber is cured at {measured} and more.',
    formula:
      'coolest usual cure against the deflection temperature at 1.8 MPa less 10 K, where the plan gives no `cure.temperature`',
    source: 'raw rubber is cured at 140 to 175 C: common practice; tables of printing materials',
    remedy: `Buy them, machine them of metal, or get them from prints: ${formerFromPrint} Then say the metal as \`fixture.material\`, and the heat of your cure as \`cure.temperature\`. ${burns}`,
    safety: true,
  },
  'heat.master-soft': {
    severity: 'stop',
    means:
      'A master softens or melts in the cure: it is pressed flat, or runs out and burns whoever opens the can.',
    ...soft,
    remedy: `Cast or machine the master in metal that stands the cure. ${burns}`,
    safety: true,
  },
  'heat.unknown': {
    severity: 'stop',
    means: 'No trusted figure says what heat a material stands, and it is to be heated.',
    values: { thing: heated.thing, 'material?': 'name', cure: 'C', 'known?': 'names' },
    says: {
      unsaid: `The plan does not say what ${'{thing, select, sprue {the sprue form} buildUp {the build-up under {subject}} spacer {the can spacer} collar {the centering collar} stop {the thickness stop} other {the {thing} {subject}}}'} is of, and it has to stand {cure}.`,
      material: `${what} is of {material}, which is no material known here, and has to stand {cure}.`,
      figure: `${what} is of {material}, and no trusted figure says whether that stands {cure}.`,
    },
    formula: 'a blank in the table stops',
    source: 'figures at 0.45 MPa are not counted: they say nothing of a part under pressure',
    remedy: {
      unsaid: `Write what it is of: \`fixture.material\`, or \`material\` of the master. ${burns}`,
      material:
        'Name a material that is known, and that stands it: {known}. Or give its data sheet under `materials`.',
      figure: `Use a material the table has a figure for, such as aluminum, steel, brass or an alloy by its composition (pewter 91-7-2), or give its data sheet under \`materials\`. ${burns}`,
    },
    safety: true,
  },
  'heat.load-untested': {
    severity: 'stop',
    means:
      'The molding pressure on a plastic is higher than the load at which its limit was measured, or one of the two is not said.',
    values: { ...heated, 'measured?': 'Pa', limit: 'Pa' },
    says: {
      pressed: `${what} is pressed with {measured}; the limit of {material} was measured at {limit}.`,
      unstated: `${what} is of {material}, whose heat limit is in print without the load it was measured under; {limit} is what counts here.`,
      unsaid: `The plan does not say how hard the can is pressed; the limit of {material} was measured at {limit}.`,
    },
    formula: 'molding pressure against 1.8 MPa, or against the load the plan gives with an own material',
    source: 'ISO 75-2, load of method A; data sheet named in the plan',
    remedy: {
      pressed: `Press with less, or make the fixture of metal. ${burns}`,
      unstated: `Make the fixture of metal, or give the data sheet of your material under a name of its own in \`materials\`. ${burns}`,
      unsaid: `Write \`closing.pressure\`, or make the fixture of metal. ${burns}`,
    },
    safety: true,
  },
  'heat.pour-too-hot': {
    severity: 'stop',
    means: 'The metal is poured hotter than the halves stand: they burn, soften or break up while they spin.',
    values: { measured: 'C', limit: 'C', 'material?': 'name' },
    says: {
      poured: `The metal is poured at {measured}; ${halvesStand}`,
      melts: `The metal melts at {measured} and is poured no cooler; ${halvesStand}`,
    },
    formula:
      "pouring temperature (where the plan leaves it out, where the metal is molten) against the rubber's highest metal temperature, or a plastic half's limit at 1.8 MPa or more less 10 K",
    source:
      "the maker's sheet: `rubber.maxTemperature` or `materials` of the plan; of rigid halves else the table of materials",
    remedy: `Pour cooler, or take halves that stand the metal. ${burns}`,
    safety: true,
  },
  'heat.pour-unknown': {
    severity: 'stop',
    means: 'What is poured into rigid halves, and how hot, is left out: nobody can say that they stand it.',
    values: { missing: 'names' },
    says: 'Whether the halves stand what is poured into them is not known: the plan does not say {missing}.',
    formula: 'what is left out counts as what would be stopped',
    source: 'our own choice',
    remedy: `Write what is named, also where it is cold: a casting resin has a \`pour\` of some 25 C (77 F). ${burns}`,
    safety: true,
  },
  'heat.pour-cold': {
    severity: 'stop',
    means: 'The metal is poured before it is wholly molten: slush fills nothing.',
    values: { measured: 'C', limit: 'C' },
    says: 'The metal is to be poured at {measured}; it is wholly molten at {limit} at the soonest.',
    formula: 'pouring temperature against the liquidus, or where that is not known the solidus',
    source: 'liquidus by the plan, else by the table of alloys',
    remedy: `Pour hotter, within what the halves stand, or take an alloy that melts lower. ${burns}`,
  },
  'heat.little-superheat': {
    severity: 'warn',
    means: 'The metal is poured so little over its liquidus that thin parts set before they are full.',
    values: { measured: 'K', limit: 'K', pour: 'C', liquidus: 'C' },
    says: 'The metal is poured at {pour}, {measured} over its liquidus of {liquidus}; {limit} is wanted.',
    formula: 'pouring temperature less liquidus; at least 20 K',
    source: 'liquidus by the plan, else by the table of alloys; 20 K is common practice, no published source',
    remedy: `Pour hotter, within what the halves stand. ${burns}`,
  },
  'heat.half-unknown': {
    severity: 'stop',
    means: 'Nobody knows what metal temperature the halves stand.',
    values: { material: 'name', pour: 'C', 'load?': 'Pa', 'least?': 'Pa' },
    says: {
      load: 'The heat limit of {material} was measured at {load}, and metal is poured into it at {pour}; figures at less than {least} say nothing of halves under pressure.',
      material:
        'The halves are of {material}, which is no material known here, and are to stand metal at {pour}.',
      figure: noFigure,
      compound: noFigure,
    },
    formula: 'a blank in the table stops',
    source: "the maker's sheet",
    remedy: {
      load: `Give the figure at 1.8 MPa of its data sheet. ${knownHalves}`,
      material: knownHalves,
      figure: knownHalves,
      compound: `Write \`maxTemperature\` under \`rubber\`, as the maker of the compound gives it. ${burns}`,
    },
    safety: true,
  },
  'heat.damp': {
    severity: 'warn',
    means:
      'The halves are porous: what damp is left in them turns to steam under molten metal and throws it out.',
    values: { material: 'name', pour: 'C' },
    says: 'The halves are of {material}, which takes up damp, and metal at {pour} is poured into them.',
    formula: 'the material is porous, or a plastic that takes up water, and molten metal is poured',
    source: 'safety advice of national authorities on water and molten metal',
    remedy: `Bake the halves until they no longer lose weight, and preheat them just before pouring. ${burns}`,
  },
  'heat.cure-inhibition': {
    severity: 'warn',
    means:
      'Something in the face that silicone is poured on keeps it from curing: resin that is not fully cured, sulfur in clay or rubber, amines.',
    values: { material: 'name', 'compound?': 'name' },
    says: 'The pattern plates are of {material}, on which {compound, select, none {silicone} other {{compound}}} may stay uncured.',
    formula: 'the material of the pattern plates is among those named',
    source: 'common practice, no published source',
    remedy:
      'Post-cure and wash the face, seal it with a barrier coat, and pour a small trial beside it first.',
  },
});
