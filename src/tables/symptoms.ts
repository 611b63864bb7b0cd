import { published, type RowSource } from './source.ts';

type SymptomProcess = 'rubber' | 'rigid' | 'poured';

/** One thing that may be behind what is seen, and what to change about it. */
export interface SymptomCause {
  readonly cause: string;
  readonly change: string;
  /** Findings that tell of it before a mold is made. */
  readonly codes?: readonly string[];
  /** Left out where it may be so in any mold. */
  readonly processes?: readonly SymptomProcess[];
}

/** What is seen on a casting or on the mold, with its causes, the likeliest and cheapest to try first. */
export interface Symptom {
  readonly seen: string;
  /** What founders call it. */
  readonly kind: string;
  readonly causes: readonly SymptomCause[];
}

/** Names of the kinds; which cause is likely, and what is changed first, is common practice without published source. */
export const symptomKinds: RowSource = published(
  'ASM Handbook vol. 15, Common Defects in Various Casting Processes: the seven categories of the International Committee of Foundry Technical Associations',
);

const pressed = ['rubber'] as const;
const soft = ['rubber', 'poured'] as const;
const plated = ['poured'] as const;
const stiff = ['rigid'] as const;

/** Written for metal, wax and resin alike: "metal" is whatever is poured. */
export const symptoms: readonly Symptom[] = [
  {
    seen: 'Ends or tips are short, rounded, the rest is sound',
    kind: 'incomplete casting',
    causes: [
      {
        cause: 'Air has no way out of that end.',
        change: 'Cut a vent from the last place to fill, narrow first.',
      },
      {
        cause: 'The mold turns too slowly for the finest detail.',
        change: 'Spin faster, in small steps, within all limits of speed.',
        codes: ['shot.slow'],
      },
      {
        cause: 'Metal or mold is too cold.',
        change: 'Pour a few castings to warm the mold; then pour hotter, within what the halves stand.',
        codes: ['heat.pour-cold', 'heat.little-superheat'],
      },
      { cause: 'The gate is too narrow or freezes first.', change: 'Widen the gate a little at a time.' },
      { cause: 'Too little was poured.', change: 'Weigh the shot anew.', codes: ['shot.short'] },
    ],
  },
  {
    seen: 'Some cavities are full, others empty or short, always on one side',
    kind: 'incomplete casting',
    causes: [
      {
        cause: 'The disc does not run true, or lies off the axis.',
        change: 'Center it; look at the balance on this plan.',
        codes: ['balance.over', 'balance.machine'],
      },
      {
        cause: 'The stream falls beside the middle of the well.',
        change: 'Pour into the middle, in one go, until the well is full.',
      },
      {
        cause: 'Gates are of unequal width or length.',
        change: 'Cut them alike; widen those of the short cavities.',
        codes: ['channels.leads-out'],
      },
    ],
  },
  {
    seen: 'Seams or folds where two streams met (cold laps)',
    kind: 'discontinuities',
    causes: [
      {
        cause: 'Metal is too cold where the streams meet.',
        change: 'Pour hotter or into a warmer mold.',
        codes: ['heat.pour-cold', 'heat.little-superheat'],
      },
      {
        cause: 'The pour was slow or broken off.',
        change: 'Pour without a stop; have the whole shot in one ladle.',
      },
      {
        cause: 'Two gates fill one cavity, or air is held between the streams.',
        change: 'Close one gate, or vent where they meet.',
      },
    ],
  },
  {
    seen: 'Swirls, flow lines or rough skin near the gate',
    kind: 'defective surface',
    causes: [
      {
        cause: 'Metal enters too fast.',
        change: 'Spin slower; lead the gate in by a bend or make it wider.',
      },
      { cause: 'Dross goes in with the stream.', change: 'Skim; draw from under the skin of the melt.' },
      { cause: 'Too much talc or parting agent.', change: 'Brush or blow it off; dust thinner.' },
    ],
  },
  {
    seen: 'Pits and bubbles open at the surface',
    kind: 'cavities',
    causes: [
      {
        cause: 'Damp in the mold, talc or tools.',
        change: 'Dry and warm everything that metal touches, spin the mold empty first.',
        codes: ['heat.damp'],
      },
      { cause: 'Air is trapped.', change: 'Vent the place; pour a little slower.' },
      {
        cause: 'The half gives off gas: it is not cured through or not heated on.',
        change: 'Cure longer or heat on as its sheet says; see the cure figures.',
        codes: ['cure.short', 'heat.cure-inhibition'],
        processes: soft,
      },
      {
        cause: 'The half gives off gas near its limit of heat.',
        change: 'Pour cooler, or make the halves of what stands more.',
        codes: ['heat.pour-too-hot'],
        processes: stiff,
      },
      { cause: 'The metal is overheated.', change: 'Pour cooler.' },
    ],
  },
  {
    seen: 'Sunk spots on thick places',
    kind: 'cavities',
    causes: [
      {
        cause: 'The thick place sets last and has nothing to draw from.',
        change: 'Gate into the thick place; widen the gate.',
      },
      { cause: 'Metal or mold is too hot.', change: 'Pour cooler; let the mold cool between pours.' },
      { cause: 'The mold was stopped too early.', change: 'Keep it turning until all has set.' },
    ],
  },
  {
    seen: 'Flash: thin fins along the parting line',
    kind: 'metallic projections',
    causes: [
      {
        cause: 'The halves are pushed apart.',
        change: 'Spin slower or close harder, within the limits of machine and rubber.',
        codes: ['shot.flash'],
      },
      { cause: 'Dirt, talc or old flash between the halves.', change: 'Clean both faces.' },
      { cause: 'Metal is too hot and thin.', change: 'Pour cooler.' },
      {
        cause: 'The faces do not meet: a step, a boss that stands too high, a master not pressed in.',
        change: 'Close the halves empty against light; dress what holds them apart.',
        codes: ['registration.mismatch'],
      },
      {
        cause: 'The halves have warped or worn.',
        change: 'Make new halves.',
      },
    ],
  },
  {
    seen: 'Front and back are shifted against each other',
    kind: 'incorrect dimensions',
    causes: [
      {
        cause: 'The halves were closed in the wrong place.',
        change: 'Close them by the index marks and notch.',
        codes: ['registration.closes-turned', 'registration.too-few'],
      },
      {
        cause: 'Bosses have play in their sockets.',
        change: 'Clean the sockets; take larger bosses, farther out.',
        codes: ['registration.mismatch'],
      },
      {
        cause: 'A master moved while the can was closed.',
        change: 'Cut its pocket to fit; close evenly and crosswise.',
        processes: pressed,
      },
    ],
  },
  {
    seen: 'Castings stick, or tear the half as they come out',
    kind: 'mold',
    causes: [
      {
        cause: 'The master locks in one half.',
        change: 'Turn or sink it otherwise (inspect --lie ranks the ways).',
        codes: ['release.locked', 'release.undercut', 'mold.undercut-locked'],
      },
      { cause: 'No parting agent, or it has worn off.', change: 'Dust or brush anew, thinly.' },
      {
        cause: 'Opened too hot or too late.',
        change: 'Let it set; take castings out while the mold is warm.',
      },
      {
        cause: 'Metal is too hot for the half and bonds to it.',
        change: 'Pour cooler.',
        codes: ['heat.pour-too-hot'],
      },
    ],
  },
  {
    seen: 'The half tears or breaks through between cavities, or at an outer face',
    kind: 'mold',
    causes: [
      {
        cause: 'Wall or cover is too thin.',
        change: 'Move the masters apart or inward; take thicker stock.',
        codes: ['walls.thin', 'walls.broken', 'cover.thin', 'cover.through'],
      },
      {
        cause: 'Cured too long or too hot: hard and brittle.',
        change: 'Shorten the cure.',
        codes: ['cure.over'],
        processes: pressed,
      },
      {
        cause: 'It was pried at the wrong place.',
        change: 'Part at the tab, with a blunt blade, evenly round.',
      },
      {
        cause: 'The disc is stressed beyond what its material stands: do not spin it again.',
        change: 'Make it anew, slower or of stronger material.',
        codes: ['spin.weak'],
        processes: stiff,
      },
    ],
  },
  {
    seen: 'Soft, sticky or spongy spots in the half',
    kind: 'mold',
    causes: [
      {
        cause: 'The middle did not get warm long enough.',
        change: 'Cure longer; see the cure figures.',
        codes: ['cure.short', 'cure.not-heating'],
        processes: pressed,
      },
      {
        cause: 'Too little pressure or rubber: it is porous.',
        change: 'Add rubber; close until the halves are pressed full.',
        codes: ['pack.short', 'closing.press-short', 'closing.clamps-short'],
        processes: pressed,
      },
      {
        cause: 'Resin, sulfur or amines on the plate kept it from curing.',
        change: 'Seal the plate, try a corner overnight.',
        codes: ['heat.cure-inhibition'],
        processes: plated,
      },
      {
        cause: 'Mixed badly or in the wrong ratio.',
        change: 'Weigh and mix anew, scrape the cup.',
        processes: plated,
      },
    ],
  },
  {
    seen: 'Masters or fixtures come out bent, or pressed out of place',
    kind: 'mold',
    causes: [
      {
        cause: 'Thin ends had nothing under them.',
        change: 'Lay build-ups under them.',
        codes: ['support.free'],
        processes: pressed,
      },
      {
        cause: 'A plastic form went soft in the can.',
        change: 'Make it of metal.',
        codes: ['heat.fixture-soft', 'heat.former-soft', 'heat.master-soft'],
        processes: pressed,
      },
      {
        cause: 'Too much rubber over them.',
        change: 'Cut pockets by the volume of each master.',
        codes: ['pack.flows-out', 'pack.locked'],
        processes: pressed,
      },
    ],
  },
  {
    seen: 'Castings are smaller or larger than wanted',
    kind: 'incorrect dimensions',
    causes: [
      {
        cause: 'The allowance does not fit alloy or rubber.',
        change: 'Measure ten castings; set shrink by them.',
      },
      {
        cause: 'Mold or metal temperature differs from pour to pour.',
        change: 'Keep to one rhythm; write it down.',
      },
    ],
  },
  {
    seen: 'The machine shakes',
    kind: 'machine',
    causes: [
      {
        cause: 'A cavity stayed empty, or metal ran to one side. Stop; never lean over it.',
        change: 'Let it run out; clear the cavity before the next pour.',
        codes: ['balance.misrun', 'balance.misrun-grade'],
      },
      {
        cause: 'The disc is out of balance or not on the axis.',
        change: 'Center it; place masters against each other.',
        codes: ['balance.over', 'balance.machine'],
      },
    ],
  },
  {
    seen: 'Metal comes back out of the pouring hole',
    kind: 'machine',
    causes: [
      { cause: 'Too much was poured.', change: 'Weigh the shot by the amounts.', codes: ['shot.spill'] },
      { cause: 'Gates have frozen or are blocked.', change: 'Clear and warm the mold.' },
      { cause: 'The disc turned too slowly when it was poured.', change: 'Pour at full speed.' },
    ],
  },
];

/** What concerns a process, with the causes that do. */
export const symptomsOf = (process: SymptomProcess): Symptom[] =>
  symptoms
    .map((symptom) => ({
      ...symptom,
      causes: symptom.causes.filter(({ processes }) => !processes || processes.includes(process)),
    }))
    .filter(({ causes }) => causes.length > 0);
