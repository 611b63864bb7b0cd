import { type Finding, finding, type TextPlace } from '../findings/index.ts';
import { degreesPerRad, mmPerInch } from '../geometry/index.ts';
import { fixtureDefaults, type NumberWritten, type Plan } from '../plan/index.ts';
import type { Sprue } from './mold.ts';
import { resolveDisc, resolveSprue } from './resolve-disc.ts';
import { type DiscFault, discFaults, formFaults, recessFaults, type SprueFault } from './shapes/index.ts';

/** No disc is larger that a number without a unit may mean, mm. */
const widest = 1000;

type Section = 'disc' | 'sprue';
type Written = NumberWritten & { readonly section: Section };

/** What of disc and sprue form cannot be made, at the line that says so, with what bare numbers would mean in inches. */
export function judgeSizes(plan: Plan): Finding[] {
  const { discs, sprues } = faultsOf(plan);
  const written = [...writtenIn(plan, 'disc'), ...writtenIn(plan, 'sprue')];
  const about = (section: Section, which: Which) => {
    const at = placeOf(plan, section, written, which);
    return { subject: section, ...(at && { at }) };
  };
  const meant = (which: Which) => ({ meant: inInches(plan, written, which) });
  return [
    ...discs.map((fault) =>
      finding('layout.disc-form', {
        ...about('disc', fault.which),
        values: { ...fault, ...meant(fault.which) },
      }),
    ),
    ...sprues.map(({ which, measured, limit }) => {
      if (which !== 'closed') {
        const values = { which, measured, limit, ...meant(which) };
        return finding('layout.sprue-form', { ...about('sprue', which), values });
      }
      const draft = (resolveSprue(plan)?.draftRad ?? 0) * degreesPerRad;
      return finding('fit.sprue-closed', {
        ...about('sprue', which),
        values: { measured, limit, draft, ...meant(which) },
      });
    }),
  ];
}

type Which = (DiscFault | SprueFault)['which'];

/** Numbers each fault comes of, the likeliest first: one of them is to be changed. */
const comesOf: { readonly [W in Which]: readonly string[] } = {
  thin: ['disc.thickness', 'disc.lower', 'disc.upper', 'disc.rimChamfer'],
  small: ['disc.diameter', 'disc.rimChamfer'],
  closed: ['sprue.draft', 'sprue.hole'],
  'well-narrow': ['sprue.well.diameter', 'sprue.hole'],
  'well-rim': ['sprue.well.diameter', 'sprue.hole'],
  'well-closed': ['sprue.draft', 'sprue.well.depth', 'sprue.well.diameter'],
  'dome-high': ['sprue.dome.height', 'sprue.well.depth'],
  'dome-steep': ['sprue.dome.height', 'sprue.dome.diameter'],
  'dome-wide': ['sprue.dome.diameter', 'sprue.well.diameter'],
  'fillet-well': ['sprue.fillet', 'sprue.dome.diameter', 'sprue.well.depth', 'sprue.well.diameter'],
  'fillet-mouth': ['sprue.fillet', 'sprue.well.diameter', 'sprue.hole'],
  plug: ['sprue.hole', 'sprue.draft'],
  spigot: ['sprue.pieces', 'sprue.hole'],
  'spigot-wall': ['sprue.pieces', 'sprue.hole'],
  'spigot-deep': ['sprue.grip', 'sprue.pieces'],
  puller: ['sprue.grip', 'sprue.puller.screw'],
};

const nameOf = ({ section, name }: Written): string => `${section}.${name}`;

const writtenIn = (plan: Plan, section: Section): Written[] =>
  (plan[section]?.written ?? []).map((one) => ({ ...one, section }));

/** Where the plan says the number at fault, else where its section begins. */
function placeOf(
  plan: Plan,
  section: Section,
  written: readonly Written[],
  which: Which,
): TextPlace | undefined {
  const said = comesOf[which].flatMap((name) => written.filter((one) => nameOf(one) === name));
  return (said[0] ?? plan[section])?.at;
}

/** All that is wrong with sizes of the plan. */
function faultsOf(plan: Plan): { discs: DiscFault[]; sprues: SprueFault[] } {
  const [disc, sprue] = [resolveDisc(plan), resolveSprue(plan)];
  const clearance = plan.fixture?.clearance ?? fixtureDefaults.clearance;
  const ofForm = (form: Sprue): SprueFault[] => {
    const recess = recessFaults(form, disc);
    return recess.length > 0 ? recess : formFaults(form, disc.upper, clearance);
  };
  return { discs: discFaults(disc), sprues: sprue ? ofForm(sprue) : [] };
}

/**
 * A number without a unit, else those the fault comes of, else all of them, with which the fault is gone and no other
 * comes where they are inches.
 */
function inInches(plan: Plan, written: readonly Written[], which: Which): string[] | undefined {
  const bare = written.filter(({ bare: text, name }) => text !== undefined && !notLengths.test(name));
  const atFault = bare.filter((one) => comesOf[which].includes(nameOf(one)));
  const known = kindsOf(plan);
  const right = [...bare.map((one) => [one]), atFault, bare].find((some) => {
    const other = some.reduce(inchesAt, plan);
    const { diameter } = other.disc;
    const { lower, upper } = resolveDisc(other);
    if (some.length === 0 || Math.max(diameter, lower, upper) > widest) return false;
    const deep = resolveSprue(other)?.wellDepth ?? 0;
    return deep < lower && kindsOf(other).every((kind) => kind !== which && known.includes(kind));
  });
  return right?.map(({ name, bare: text }) => `\`${name}: ${text} in\``);
}

const notLengths = /^(draft|label|puller\.screw)$/;

function kindsOf(plan: Plan): Which[] {
  const { discs, sprues } = faultsOf(plan);
  return [...discs, ...sprues].map(({ which }) => which);
}

const inchesAt = (plan: Plan, { section, name }: Written): Plan => ({
  ...plan,
  [section]: scaled(plan[section], name.split('.')),
});

/** The value with the number at a path 25.4 times as great. */
function scaled(value: unknown, [key, ...rest]: readonly string[]): unknown {
  if (key === undefined) return typeof value === 'number' ? value * mmPerInch : value;
  if (typeof value !== 'object' || value === null) return value;
  return { ...value, [key]: scaled((value as Readonly<Record<string, unknown>>)[key], rest) };
}
