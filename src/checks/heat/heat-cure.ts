import { type Figure, type Finding, finding, makeFigure, type ReportPart } from '../../findings/index.ts';
import { type Check, canRings, check, type Mold } from '../../mold/index.ts';
import { coolestCure, heatRow, heatRows, standsC } from '../../tables/index.ts';
import { type Heated, placedMasters, ringThing, testedPa } from './heat-limits.ts';

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

/** Fixtures and masters against the heat and the pressure of the cure. */
export const heatOfCure: Check = check<CureInput>({
  id: 'heat-cure',
  title: 'Heat of the cure',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
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
    return [{ subject: 'cure', about: [], input }];
  },
  run: ({ things, unsaid, cureC, pressurePa }) => {
    const note = (which: 'cure' | 'masters', missing: readonly string[]): Finding =>
      finding('heat.not-checked', { subject: 'cure', values: { which, missing } });
    if (cureC === undefined)
      return { findings: [...softFormers(things), note('cure', ['cure.temperature'])] };
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

/** Fixtures of plastics that no usual cure leaves whole, one finding for each: said before the plan names its cure. */
function softFormers(things: readonly Heated[]): Finding[] {
  const formers = things.filter(({ thing }) => thing !== 'master');
  return [...new Set(formers.map(({ material }) => material))].flatMap((material) => {
    const row = heatRow(material);
    const stands = row && standsC(row);
    if (row?.kind !== 'plastic' || (stands ?? 0) >= coolestCure.value) return [];
    const names = formers.filter((one) => one.material === material).map(({ subject }) => subject);
    const values = { names, material, measured: coolestCure.value, limit: stands };
    return [finding('heat.former-soft', { subject: 'fixture', values })];
  });
}

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
