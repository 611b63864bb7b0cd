import { codes } from './entry.ts';

const practice = 'common practice, no published source';
const lost = { bad: 'count', measured: 'count' } as const;
const came = '{bad, number} of {measured, number} castings of {subject}';
const fisher =
  "chance of so great a difference by accident under 5 %: R. A. Fisher's exact test, one-sided, times the eight directions looked in";
const rule = { severity: 'note' } as const;

/** What was seen of castings, and what follows from it. */
export const trialCodes = codes({
  'trials.pour-twice': {
    severity: 'stop',
    means: 'Two pours of a trial log have the same number, so that one could be taken for the other.',
    values: { pour: 'count', line: 'count' },
    says: 'Pour {pour, number} stands twice; the first is in line {line, number}.',
    remedy: 'Give every pour a number of its own.',
  },
  'trials.unknown-cavity': {
    severity: 'stop',
    means: 'A pour says what came of a cavity that neither the plan nor an earlier pour has.',
    values: { name: 'name', 'meant?': 'name', known: 'names' },
    says: 'The plan places no `{name}`{meant, select, none {; it has {known}.} other {; did you mean `{meant}`?}}',
    remedy: 'Correct the name.',
  },
  'trials.gone': {
    severity: 'note',
    means:
      'The log tells of cavities that the plan no longer has; what came of them is kept and counted by itself.',
    values: { names: 'names', measured: 'count' },
    says: '{measured, plural, one {A cavity} other {# cavities}} of earlier pours {measured, plural, one {is} other {are}} no longer in the plan: {names}.',
    remedy: 'Nothing needs to be done; they stay in the log under their old names.',
  },
  'trials.good-and-bad': {
    severity: 'stop',
    means: 'A casting is said to be good and to have a fault in the same pour.',
    values: { fault: 'name' },
    says: '`{subject}` is said to be good and {fault} in one pour.',
    remedy: 'Keep one of the two.',
  },
  'trials.no-help': {
    ...rule,
    means:
      'A change was tried by itself and castings came out no better: it is not proposed again for these cavities.',
    formula:
      'share of bad castings after it at least that before it, nothing else changed about the same cavities',
    source: 'count',
    values: {
      change: 'name',
      pour: 'count',
      before: 'count',
      beforeOf: 'count',
      after: 'count',
      afterOf: 'count',
    },
    says: 'Tried at pour {pour, number} for {subject} ({change}): {before, number} of {beforeOf, number} were bad before, {after, number} of {afterOf, number} after.',
    remedy: 'Try something else first.',
  },
  'try.open-gate': {
    ...rule,
    means: 'Castings stay short or porous, and the forecast holds air back under their gate.',
    formula: 'a fault that air or missing metal makes, and air under the gate in the forecast as cut',
    source: 'two plane two-phase flow runs (`tests/published/fill`); common practice, no published source',
    values: { ...lost, 'width?': 'mm', volume: 'mm3' },
    says: `${came} stay short or porous; the forecast holds up to {volume} of air back under the gate.`,
    remedy: 'Open the gate{width, select, none {} other { to {width}}}, and nothing else, then pour again.',
  },
  'try.vent': {
    ...rule,
    means: 'Castings stay short or porous, and the forecast has a place where air is shut in.',
    formula: 'a fault that air or missing metal makes, and a pocket of air in the forecast as cut',
    source: practice,
    values: { ...lost, volume: 'mm3' },
    says: `${came} stay short or porous; the forecast shuts up to {volume} of air in there.`,
    remedy: 'Cut a vent from that place, narrow first, and nothing else, then pour again.',
  },
  'try.center': {
    ...rule,
    means: 'Castings are bad on one side of the disc, more than chance explains.',
    formula: fisher,
    source: practice,
    values: { ...lost, angle: 'deg', otherBad: 'count', otherOf: 'count', chance: 'ratio' },
    says: '{bad, number} of {measured, number} castings are bad on the side towards {angle}, {otherBad, number} of {otherOf, number} on the other; chance makes so much in {chance}.',
    remedy: 'See that the disc runs true and the lid lies flat, and pour into the middle of the well.',
  },
  'try.warm-mold': {
    ...rule,
    means: 'Castings of the first pours of a day stay short, those of later ones do not.',
    formula:
      'bad in the first two pours, not in later ones; chance of it by accident under 5 %: R. A. Fisher, one-sided',
    source: practice,
    values: { ...lost, laterBad: 'count', laterOf: 'count' },
    says: `${came} are bad in the first two pours, {laterBad, number} of {laterOf, number} in later ones.`,
    remedy: 'Warm the mold, or pour the first two as waste; the casts themselves warm it.',
  },
  'try.hotter-metal': {
    ...rule,
    means: 'Castings show cold laps, or stay short where the forecast lets all air out.',
    formula: 'cold laps, or short castings of cavities that the forecast fills',
    source: practice,
    values: { ...lost, 'metal?': 'C' },
    says: `${came} show cold laps or stay short where no air is held back.`,
    remedy:
      'Pour hotter by 10 C (18 deg F){metal, select, none {} other { than {metal}}}, within what the halves stand.',
  },
  'try.faster': {
    ...rule,
    means: 'Castings stay short at places that need more pressure than the speed gives.',
    formula:
      'short castings of cavities that the forecast fills; pressure grows with the square of the speed',
    source: 'hydrostatics; common practice, no published source',
    values: { ...lost, 'speed?': 'rpm' },
    says: `${came} stay short where the forecast lets all air out.`,
    remedy:
      'Spin a twentieth faster{speed, select, none {} other { than {speed}}}, within all limits of speed: pressure grows by a tenth.',
  },
  'try.second-gate': {
    ...rule,
    means: 'Castings still stay short although gate and vents were tried.',
    formula: 'short castings, and both a wider gate and a vent tried without help',
    source: practice,
    values: lost,
    says: `${came} stay short, though the gate was opened and a vent cut.`,
    remedy: 'Cut a second gate from the other side, or move the gate.',
  },
  'try.other-place': {
    ...rule,
    means: 'Castings of a master are worse near the axis, where the pressure is least.',
    formula: 'chance of so great a difference by accident under 5 %: R. A. Fisher, one-sided',
    source: 'hydrostatics; common practice, no published source',
    values: { ...lost, otherBad: 'count', otherOf: 'count' },
    says: `${came} are bad near the axis, {otherBad, number} of {otherOf, number} farther out.`,
    remedy: 'Place it farther out, and what fills easily nearer the well.',
  },
  'try.slower': {
    ...rule,
    means: 'Castings have fins along the parting line: metal pushes the halves apart.',
    formula: 'flash; opening force grows with the square of the speed',
    source: 'hydrostatics; common practice, no published source',
    values: { ...lost, 'speed?': 'rpm' },
    says: `${came} have flash.`,
    remedy:
      'Clean both faces and close harder within what the machine allows; then spin a twentieth slower{speed, select, none {} other { than {speed}}}.',
  },
  'try.drier': {
    ...rule,
    means: 'Castings are porous where the forecast lets all air out: gas comes from mold, talc or metal.',
    formula: 'porous castings of cavities that the forecast fills',
    source: practice,
    values: lost,
    says: `${came} are porous where no air is held back.`,
    remedy:
      'Dry and warm mold, talc and tools, and dust thinner: damp makes steam in hot metal, which spatters.',
  },
  'try.release': {
    ...rule,
    means: 'The mold tears as castings come out.',
    formula: 'torn mold',
    source: practice,
    values: lost,
    says: `${came} tore the mold.`,
    remedy:
      'Dust thinly anew, take them out while the mold is warm, and look at the undercut (`inspect --lie` ranks the ways).',
  },
});
