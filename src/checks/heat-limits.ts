import {
  type CodeValues,
  type Figure,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type CanRing, type Check, canRings, type Mold, work } from '../mold/index.ts';
import { heatRow, heatRows, rubberHeat, standsC } from '../tables/index.ts';

/** Load at which the plastics' limits were measured (ISO 75-2, method A). */
const testedPa = 1.8e6;

interface Heated {
  readonly subject: string;
  readonly thing: CodeValues<'heat.unknown'>['thing'];
  readonly material: string;
}

const ringThing = {
  'can-spacer': 'spacer',
  'centering-collar': 'collar',
  'thickness-stop': 'stop',
} as const satisfies Record<CanRing['id'], Heated['thing']>;

interface CureInput {
  readonly things: readonly Heated[];
  /** Masters whose material the plan does not say. */
  readonly unsaid: readonly string[];
  readonly cureC?: number;
  readonly pressurePa?: number;
}

/** Build-ups cut from rubber cure with the mold's own. */
const ofRubber = (material: string): boolean => /rubber/i.test(material);

/** What is made of the fixture's material and lies in the can while it cures. */
function fixturesInCan(mold: Mold): Heated[] {
  const { sprue, supports, tabs, bosses, fixture } = mold;
  const { material } = fixture;
  const made = (subject: string, thing: Heated['thing']): Heated => ({ subject, thing, material });
  return [
    ...(sprue ? [made('sprue', 'sprue')] : []),
    ...supports.flatMap(({ placement: subject, material: own = material }): Heated[] =>
      ofRubber(own) ? [] : [{ subject, thing: 'buildUp', material: own }],
    ),
    ...tabs.map(({ id }) => made(id, 'tab')),
    ...canRings(mold).map(({ id }) => made(id, ringThing[id])),
    // Cap nuts are bought, of steel or brass.
    ...bosses.filter(({ kind }) => kind !== 'cap nut').map(({ id }) => made(id, 'boss')),
  ];
}

const placedMasters = ({ masters, placements }: Mold): Mold['masters'] =>
  masters.filter(({ id }) => placements.some(({ master }) => master === id));

/** Fixtures and masters against the heat and the pressure of the cure. */
export const heatOfCure: Check = work<CureInput, ReportPart>({
  id: 'heat-cure',
  title: 'Heat of the cure',
  scope: 'whole',
  processes: ['rubber'],
  jobs: (mold) => {
    const { cure, closing } = mold.bench;
    const masters = placedMasters(mold);
    const ofMasters = masters.flatMap(({ id, material }): Heated[] =>
      material === undefined ? [] : [{ subject: id, thing: 'master', material }],
    );
    const things = [...fixturesInCan(mold), ...ofMasters];
    const unsaid = masters.filter(({ material }) => material === undefined).map(({ id }) => id);
    if (things.length === 0 && unsaid.length === 0) return [];
    const { temperatureC: cureC } = cure ?? {};
    const { pressurePa } = closing ?? {};
    const input = {
      things,
      unsaid,
      ...(cureC !== undefined && { cureC }),
      ...(pressurePa !== undefined && { pressurePa }),
    };
    return [{ subject: 'cure', input }];
  },
  run: ({ things, unsaid, cureC, pressurePa }) => {
    const note = (which: 'cure' | 'masters', missing: readonly string[]): Finding =>
      finding('heat.not-checked', { subject: 'cure', values: { which, missing } });
    if (cureC === undefined) return { findings: [note('cure', ['cure.temperature'])] };
    const findings: Finding[] = [];
    const figures: Figure[] = [];
    for (const thing of things) {
      const one = underHeat(thing, cureC, pressurePa);
      findings.push(...(one.findings ?? []));
      figures.push(...(one.figures ?? []));
    }
    if (unsaid.length > 0)
      findings.push(
        note(
          'masters',
          unsaid.map((id) => `masters.${id}.material`),
        ),
      );
    return { findings, figures };
  },
});

function underHeat(
  { subject, thing, material }: Heated,
  cureC: number,
  pressurePa: number | undefined,
): ReportPart {
  const row = heatRow(material);
  const allowed = row && standsC(row);
  if (!row || allowed === undefined) {
    const about = { thing, material, cure: cureC };
    const values = row
      ? ({ which: 'figure', ...about } as const)
      : ({ which: 'material', ...about, known: heatRows.map(({ name }) => name) } as const);
    return { findings: [finding('heat.unknown', { subject, values })] };
  }
  const figures = [
    makeFigure('heat.limit', {
      subject,
      value: allowed,
      source: `${row.name}: ${row.source.text}`,
      estimated: row.source.kind === 'memory',
    }),
  ];
  if (cureC > allowed) {
    const soft = finding(thing === 'master' ? 'heat.master-soft' : 'heat.fixture-soft', {
      subject,
      values: { thing, material, measured: cureC, limit: allowed },
    });
    return { findings: [soft], figures };
  }
  if (row.kind !== 'plastic' || pressurePa === undefined || pressurePa <= testedPa) return { figures };
  const untested = finding('heat.load-untested', {
    subject,
    values: { thing, material, measured: pressurePa, limit: testedPa },
  });
  return { findings: [untested], figures };
}

interface PourInput {
  readonly process: Mold['process'];
  /** Rigid halves: what they are made of. Else the compound as the plan names it. */
  readonly material?: string;
  readonly makersLimitC?: number;
  readonly pourC?: number;
}

/** The pouring temperature against what the halves stand. */
export const heatOfPour: Check = work<PourInput, ReportPart>({
  id: 'heat-pour',
  title: 'Heat of the metal',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ process, bench, fixture, placements }) => {
    if (placements.length === 0) return [];
    const material = process === 'rigid' ? fixture.material : bench.rubber?.compound;
    const makersLimitC = process === 'rigid' ? undefined : bench.rubber?.maxTemperatureC;
    const pourC = bench.alloy?.pourC;
    const input = {
      process,
      ...(material !== undefined && { material }),
      ...(makersLimitC !== undefined && { makersLimitC }),
      ...(pourC !== undefined && { pourC }),
    };
    return [{ subject: 'alloy', input }];
  },
  run: (input) => {
    const damp = dampHalves(input);
    const { pourC, material, makersLimitC } = input;
    const missing = [
      ...(pourC === undefined ? ['alloy.pour'] : []),
      ...(material === undefined && makersLimitC === undefined ? ['rubber.maxTemperature'] : []),
    ];
    if (pourC === undefined || missing.length > 0) {
      const values = { which: 'metal', missing } as const;
      return { findings: [...damp, finding('heat.not-checked', { subject: 'alloy', values })] };
    }
    const { findings = [], figures = [] } = underMetal(input, pourC);
    return { findings: [...damp, ...findings], figures };
  },
});

function underMetal({ process, material = '', makersLimitC }: PourInput, pourC: number): ReportPart {
  const limit = halfLimit(process, material, makersLimitC);
  if (!limit) {
    const which = process !== 'rigid' ? 'compound' : heatRow(material) ? 'figure' : 'material';
    const values = { which, material, pour: pourC } as const;
    return { findings: [finding('heat.half-unknown', { subject: 'alloy', values })] };
  }
  const { valueC, source, estimated } = limit;
  const figures = [makeFigure('heat.halfLimit', { subject: 'alloy', value: valueC, source, estimated })];
  if (pourC <= valueC) return { figures };
  const hot = finding('heat.pour-too-hot', {
    subject: 'alloy',
    values: { measured: pourC, limit: valueC, ...(material && { material }) },
  });
  return { findings: [hot], figures };
}

interface HalfLimit {
  readonly valueC: number;
  readonly source: string;
  readonly estimated: boolean;
}

function halfLimit(
  process: PourInput['process'],
  material: string,
  makersC: number | undefined,
): HalfLimit | undefined {
  if (makersC !== undefined)
    return {
      valueC: makersC,
      source: "rubber.maxTemperature of the plan, from the maker's sheet",
      estimated: false,
    };
  if (process !== 'rigid') {
    const row = rubberHeat(material);
    return row && { valueC: row.limitC, source: row.source.text, estimated: true };
  }
  const row = heatRow(material);
  const valueC = row && standsC(row);
  if (!row || valueC === undefined) return undefined;
  const estimated = row.source.kind === 'memory';
  // A metal half is cold and many times heavier than the shot: it does not come near the temperature of the metal.
  if (row.name === 'aluminum') return { valueC: 582, source: `solidus; ${row.source.text}`, estimated };
  return { valueC, source: `${row.name}: ${row.source.text}`, estimated };
}

function dampHalves({ process, material, pourC }: PourInput): Finding[] {
  if (process !== 'rigid' || material === undefined || pourC === undefined) return [];
  const row = heatRow(material);
  if (row?.kind !== 'porous' && row?.name !== 'PA12') return [];
  return [finding('heat.damp', { subject: 'alloy', values: { material, pour: pourC } })];
}

interface InhibitionInput {
  readonly material: string;
  readonly compound?: string;
}

/** What keeps silicone from curing on it; common practice, no published source. */
const inhibits = /\b(resin|sla|dlp|clay|plasticine|sulfur|sulphur|rubber|latex|epoxy|amine|nitrile)\b/i;

/** The face of the pattern plates, on which silicone or resin is poured. */
export const cureInhibition: Check = work<InhibitionInput, ReportPart>({
  id: 'cure-inhibition',
  title: 'Cure inhibition',
  scope: 'whole',
  processes: ['poured'],
  jobs: ({ bench, fixture: { material } }) => {
    const { compound } = bench.rubber ?? {};
    return [{ subject: 'mold', input: { material, ...(compound !== undefined && { compound }) } }];
  },
  run: ({ material, compound }) => {
    if (!inhibits.test(material)) return {};
    return {
      findings: [finding('heat.cure-inhibition', { subject: 'mold', values: { material, compound } })],
    };
  },
});
