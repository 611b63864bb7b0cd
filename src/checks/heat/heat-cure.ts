import { type Figure, type Finding, finding, makeFigure, type ReportPart } from '../../findings/index.ts';
import { type Check, canRings, check, type Mold } from '../../mold/index.ts';
import { coolestCure, heatNames, methodAPa, standsC } from '../../tables/index.ts';
import { heatOf, ownMaterial } from '../from-mold/index.ts';
import { type Heated, placedMasters, ringThing } from './heat-limits.ts';

interface CureInput {
  readonly things: readonly Heated[];
  readonly cureC?: number;
  readonly startC?: number;
  readonly pressurePa?: number;
}

/** Build-ups cut from rubber cure with the mold's own. */
const ofRubber = (mold: Mold, material: string): boolean =>
  /rubber/i.test(material) && !ownMaterial(mold, material);

/** What is made of the fixture's material and lies in the can while it cures. */
function fixturesInCan(mold: Mold): Heated[] {
  const { sprue, supports, tabs, bosses, fixture } = mold;
  const usual = fixture.assumed ? undefined : fixture.material;
  const made = (subject: string, thing: Heated['thing'], material = usual): Heated => ({
    subject,
    thing,
    ...known(mold, material),
  });
  return [
    ...(sprue ? [made('sprue', 'sprue')] : []),
    ...supports.flatMap(({ placement: subject, material }): Heated[] =>
      ofRubber(mold, material ?? '') ? [] : [made(subject, 'buildUp', material)],
    ),
    ...tabs.map(({ id }) => made(id, 'tab')),
    ...canRings(mold).map(({ id }) => made(id, ringThing[id])),
    // Cap nuts are bought, of steel or brass.
    ...bosses.filter(({ kind }) => kind !== 'cap nut').map(({ id }) => made(id, 'boss')),
  ];
}

function known(mold: Mold, material: string | undefined): Pick<Heated, 'material' | 'row' | 'expansionPerK'> {
  if (material === undefined) return {};
  const row = heatOf(mold, material);
  const { expansionPerK } = ownMaterial(mold, material) ?? {};
  return { material, ...(row && { row }), ...(expansionPerK !== undefined && { expansionPerK }) };
}

/** Fixtures and masters against the heat and the pressure of the cure. */
export const heatOfCure: Check = check<CureInput>({
  id: 'heat-cure',
  title: 'Heat of the cure',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    const { cure, closing } = mold.bench;
    const masters = placedMasters(mold).map(
      ({ id, material }): Heated => ({ subject: id, thing: 'master', ...known(mold, material) }),
    );
    const things = [...fixturesInCan(mold), ...masters];
    if (things.length === 0) return [];
    const { temperatureC: cureC, startC } = cure ?? {};
    const { pressurePa } = closing ?? {};
    const input = {
      things,
      ...(cureC !== undefined && { cureC }),
      ...(startC !== undefined && { startC }),
      ...(pressurePa !== undefined && { pressurePa }),
    };
    return [{ subject: 'cure', about: [], input }];
  },
  run: (input) => {
    const { things, cureC } = input;
    if (cureC === undefined) {
      const values = { which: 'cure', missing: ['cure.temperature'] } as const;
      return {
        findings: [...softFormers(things), finding('heat.not-checked', { subject: 'cure', values })],
      };
    }
    const judged = things.map((thing) => underHeat(thing, { ...input, cureC }));
    return {
      findings: judged.flatMap(({ findings = [] }) => findings),
      figures: judged.flatMap(({ figures = [] }) => figures),
    };
  },
});

/** Fixtures of plastics that no usual cure leaves whole, one finding for each: said before the plan names its cure. */
function softFormers(things: readonly Heated[]): Finding[] {
  const formers = things.filter(({ thing }) => thing !== 'master');
  return [...new Set(formers.map(({ material }) => material))].flatMap((material) => {
    const row = formers.find((one) => one.material === material)?.row;
    const stands = row && standsC(row);
    if (material === undefined || row?.kind !== 'plastic' || (stands ?? 0) >= coolestCure.value) return [];
    const names = formers.filter((one) => one.material === material).map(({ subject }) => subject);
    const values = { names, material, measured: coolestCure.value, limit: stands };
    return [finding('heat.former-soft', { subject: 'fixture', values })];
  });
}

type Hot = CureInput & { readonly cureC: number };

function underHeat(heated: Heated, hot: Hot): ReportPart {
  const { subject, thing, material, row } = heated;
  const { cureC } = hot;
  const allowed = row && standsC(row);
  if (material === undefined || !row || allowed === undefined)
    return { findings: [nobodyKnows(heated, cureC)] };
  const figures = [
    makeFigure('heat.limit', {
      subject,
      value: allowed,
      source: `${row.name}: ${row.source.text}`,
      estimated: row.source.kind === 'memory',
    }),
    ...growth(heated, hot),
  ];
  if (cureC > allowed) {
    const soft = finding(thing === 'master' ? 'heat.master-soft' : 'heat.fixture-soft', {
      subject,
      values: { thing, material, measured: cureC, limit: allowed },
    });
    return { findings: [soft], figures };
  }
  return { findings: underLoad(heated, hot.pressurePa), figures };
}

function nobodyKnows({ subject, thing, material, row }: Heated, cure: number): Finding {
  const about = { thing, cure, ...(material !== undefined && { material }) };
  const which = material === undefined ? 'unsaid' : row ? 'figure' : 'material';
  const known = which === 'material' && { known: heatNames };
  return finding('heat.unknown', { subject, values: { which, ...about, ...known } });
}

/** A limit says nothing of a plastic that is pressed harder than it was measured with. */
function underLoad(
  { subject, thing, material = '', row }: Heated,
  pressurePa: number | undefined,
): Finding[] {
  if (row?.kind !== 'plastic') return [];
  const { loadPa, limitC } = row;
  // Without a limit it is a stop already.
  if (limitC === undefined) return [];
  const limit = loadPa ?? methodAPa;
  if (loadPa !== undefined && pressurePa !== undefined && pressurePa <= limit) return [];
  const which = loadPa === undefined ? 'unstated' : pressurePa === undefined ? 'unsaid' : 'pressed';
  const values = { which, thing, material, measured: pressurePa, limit } as const;
  return [finding('heat.load-untested', { subject, values })];
}

/** Rubber takes the shape of what lies in the hot can as large as it is there. */
function growth({ subject, expansionPerK, row }: Heated, { cureC, startC }: Hot): Figure[] {
  if (expansionPerK === undefined || startC === undefined) return [];
  const source = `expansion times the rise from start to cure; ${row?.source.text}`;
  const value = expansionPerK * (cureC - startC);
  return [makeFigure('heat.growth', { subject, value, source, estimated: false })];
}
