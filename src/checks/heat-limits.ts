import { type Figure, type Finding, finding, makeFigure, type ReportPart } from '../findings/index.ts';
import { type Check, canRings, type Mold, work } from '../mold/index.ts';
import { heatRow, heatRows, rubberHeat, standsC } from '../tables/index.ts';
import { notChecked } from './not-given.ts';

/** Load at which the plastics' limits were measured (ISO 75-2, method A). */
const testedPa = 1.8e6;

interface Heated {
  readonly subject: string;
  /** As it is named in a sentence. */
  readonly what: string;
  readonly material: string;
  readonly role: 'fixture' | 'master';
}

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
  const made = (there: boolean, subject: string, what: string): Heated[] =>
    there ? [{ subject, what, material, role: 'fixture' }] : [];
  return [
    ...made(sprue !== undefined, 'sprue', 'The sprue form'),
    ...supports.flatMap(({ placement: id, material: own = material }): Heated[] =>
      ofRubber(own)
        ? []
        : [{ subject: id, what: `The build-up under ${id}`, material: own, role: 'fixture' }],
    ),
    ...tabs.flatMap(({ id }) => made(true, id, `The tab ${id}`)),
    ...canRings(mold).flatMap(({ id }) => made(true, id, `The ${id.replace('-', ' ')}`)),
    // Cap nuts are bought, of steel or brass.
    ...bosses.flatMap(({ id, kind }) => made(kind !== 'cap nut', id, `The boss ${id}`)),
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
      material === undefined ? [] : [{ subject: id, what: `The master ${id}`, material, role: 'master' }],
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
    if (cureC === undefined)
      return {
        findings: [heatNote('cure', 'What the cure does to fixtures and masters is', ['cure.temperature'])],
      };
    const findings: Finding[] = [];
    const figures: Figure[] = [];
    for (const thing of things) {
      const one = underHeat(thing, cureC, pressurePa);
      findings.push(...(one.findings ?? []));
      figures.push(...(one.figures ?? []));
    }
    if (unsaid.length > 0)
      findings.push(
        heatNote(
          'cure',
          'Whether the masters stand the cure is',
          unsaid.map((id) => `masters.${id}.material`),
        ),
      );
    return { findings, figures };
  },
});

const heatNote = (subject: string, what: string, places: readonly string[]): Finding =>
  notChecked('heat.not-checked', subject, what, places);

function underHeat(
  { subject, what, material, role }: Heated,
  cureC: number,
  pressurePa: number | undefined,
): ReportPart {
  const row = heatRow(material);
  const allowed = row && standsC(row);
  if (!row || allowed === undefined) {
    const says = row
      ? `${what} is of ${material}, and no trusted figure says whether that stands ${celsius(cureC)}.`
      : `${what} is of ${material}, which is no material known here, and has to stand ${celsius(cureC)}.`;
    return { findings: [finding('heat.unknown', { subject, says, ...(!row && { remedy: nameAnother() }) })] };
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
    const soft = finding(role === 'master' ? 'heat.master-soft' : 'heat.fixture-soft', {
      subject,
      measured: { value: cureC, unit: 'C' },
      limit: { value: allowed, unit: 'C' },
      says: `${what} is of ${material}, which stands ${celsius(allowed)}; the can is heated to ${celsius(cureC)}.`,
    });
    return { findings: [soft], figures };
  }
  if (row.kind !== 'plastic' || pressurePa === undefined || pressurePa <= testedPa) return { figures };
  const untested = finding('heat.load-untested', {
    subject,
    measured: { value: pressurePa, unit: 'Pa' },
    limit: { value: testedPa, unit: 'Pa' },
    says: `${what} is pressed with ${(pressurePa / 1e6).toFixed(2)} MPa; the limit of ${material} was measured at 1.8 MPa.`,
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
    if (pourC === undefined || missing.length > 0)
      return { findings: [...damp, heatNote('alloy', 'Whether the halves stand the metal is', missing)] };
    const { findings = [], figures = [] } = underMetal(input, pourC);
    return { findings: [...damp, ...findings], figures };
  },
});

function underMetal({ process, material = '', makersLimitC }: PourInput, pourC: number): ReportPart {
  const limit = halfLimit(process, material, makersLimitC);
  if (!limit) {
    const says =
      process === 'rigid' && !heatRow(material)
        ? `The halves are of ${material}, which is no material known here, and are to stand metal at ${celsius(pourC)}.`
        : `The halves are of ${material}, and no figure at hand says whether that stands metal at ${celsius(pourC)}.`;
    const remedy =
      process === 'rigid'
        ? 'Make the halves of a material the table has a figure for, such as aluminum or steel.'
        : undefined;
    return {
      findings: [finding('heat.half-unknown', { subject: 'alloy', says, ...(remedy && { remedy }) })],
    };
  }
  const { valueC, source, estimated } = limit;
  const figures = [makeFigure('heat.halfLimit', { subject: 'alloy', value: valueC, source, estimated })];
  if (pourC <= valueC) return { figures };
  const hot = finding('heat.pour-too-hot', {
    subject: 'alloy',
    measured: { value: pourC, unit: 'C' },
    limit: { value: valueC, unit: 'C' },
    says: `The metal is poured at ${celsius(pourC)}; halves of ${material || 'this rubber'} stand ${celsius(valueC)}.`,
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
  const says = `The halves are of ${material}, which takes up damp, and metal at ${celsius(pourC)} is poured into them.`;
  return [finding('heat.damp', { subject: 'alloy', says })];
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
    const says = `The pattern plates are of ${material}, on which ${compound ?? 'silicone'} may stay uncured.`;
    return { findings: [finding('heat.cure-inhibition', { subject: 'mold', says })] };
  },
});

const nameAnother = (): string =>
  `Name a material that is known, and that stands it: ${heatRows.map(({ name }) => name).join(', ')}.`;

const celsius = (value: number): string => `${value.toFixed(0)} C (${(value * 1.8 + 32).toFixed(0)} F)`;
