import { type FigureName, figureCatalogue, type Report } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { fixed, runs, showQuantity } from '../../wording/index.ts';
import { boltText } from '../bolt-text.ts';
import type { Build } from '../build.ts';
import { figureText } from './lists.ts';
import type { Column, Paper } from './paper.ts';

type Row = readonly [what: string, value: string];

/** What the bench works by: first what the plan gives, then what the report says of it. */
interface Group {
  readonly title: string;
  readonly given?: (build: Build) => Row[];
  readonly names: readonly FigureName[];
}

const groups: readonly Group[] = [
  {
    title: 'Metal to melt',
    given: metal,
    names: [
      'shot.poured',
      'shot.least',
      'shot.most',
      'pressure.opening',
      'flash.force',
      'flash.gap',
      'squeeze.most',
      'squeeze.part',
      'speed.least',
      'speed.most',
      'spin.rimSpeed',
    ],
  },
  { title: 'Silicone or resin to mix', given: toMix, names: [] },
  {
    title: 'Closing the can',
    given: fasteners,
    names: [
      'closing.force',
      'closing.clamps',
      'closing.held',
      'closing.clampPreload',
      'closing.clampTorqueLeast',
      'closing.clampTorqueMost',
      'closing.bolts',
      'closing.boltProof',
      'closing.boltShare',
      'closing.boltLoad',
      'closing.boltPreload',
      'closing.boltTorqueLeast',
      'closing.boltTorqueMost',
      'closing.lid',
      'closing.lidHeldOn',
      'closing.lidStress',
      'closing.lidBow',
      'closing.sprueForce',
    ],
  },
  {
    title: 'Rubber in the can',
    names: [
      'pack.can',
      'pack.laidIn',
      'pack.cold',
      'pack.excess',
      'spew.least',
      'spew.most',
      'spew.depth',
      'ledger.leftover',
    ],
  },
  {
    title: 'Cure',
    given: heating,
    names: [
      'cure.middle',
      'cure.face',
      'cure.gatheredHot',
      'cure.gathered',
      'cure.fromCooling',
      'cure.gatheredFace',
      'cure.share',
      'cure.needed',
    ],
  },
  {
    title: 'Setting and pours',
    names: [
      'setting.open',
      'setting.well',
      'pours.cycle',
      'pours.perHour',
      'pours.halves',
      'pours.preheatLeast',
      'pours.preheatSure',
    ],
  },
  {
    title: 'Order',
    given: ordered,
    names: ['order.pours', 'order.metal', 'order.used', 'order.remelt', 'order.time'],
  },
  {
    title: 'Cost',
    names: ['cost.metal', 'cost.work', 'cost.mold', 'cost.moldShare', 'cost.casting', 'cost.run'],
  },
  {
    title: 'Balance',
    names: [
      'balance.static',
      'balance.angle',
      'balance.empty',
      'balance.misrun',
      'balance.added',
      'balance.permissible',
      'balance.true',
      'balance.correction',
    ],
  },
  {
    title: 'Registration',
    names: [
      'registration.falseSeat',
      'registration.falseSeatAngle',
      'registration.shift',
      'registration.turn',
    ],
  },
];

/** A row where the value is known. */
const row = (what: string, value: string | undefined): Row[] => (value === undefined ? [] : [[what, value]]);

const show = <T>(value: T | undefined, as: (value: T) => string): string | undefined =>
  value === undefined ? undefined : as(value);

function metal({ mold: { bench, units } }: Build): Row[] {
  const { alloy, machine, spin } = bench;
  return [
    ...row('Alloy.', alloy?.name),
    ...row(
      'Pour at.',
      show(alloy?.pourC, (value) => showQuantity(value, 'C', units)),
    ),
    ...row(
      'Speed while pouring.',
      show(spin?.speedRpm, (value) => `${fixed(value, 0)} rpm`),
    ),
    ...row('Turning, seen from above.', machine?.direction),
  ];
}

/** Each master that is ordered, and how many come of it. */
function ordered({ mold: { bench }, report }: Build): Row[] {
  return Object.entries(bench.order?.pieces ?? {}).flatMap(([master, wanted]) =>
    row(`${master}: ${wanted} wanted, made:`, figureText(report, 'order.made', master)),
  );
}

/** Halves that are poured on plates take their own volume. */
function toMix({ mold, solids }: Build): Row[] {
  if (mold.process !== 'poured') return [];
  const density = mold.bench.rubber?.densityKgM3;
  return solids.flatMap(({ solid: { role, title }, audit: { volume } }) => {
    const mass = density === undefined ? '' : `, ${showQuantity(volume * density * 1e-6, 'g', mold.units)}`;
    return role === 'half'
      ? row(
          `For the ${title}; add what stays in the cup.`,
          `${showQuantity(volume, 'mm3', mold.units)}${mass}`,
        )
      : [];
  });
}

/** How many, and how thick a lid, is among the figures. */
function fasteners({ mold: { bench, units } }: Build): Row[] {
  const { bolts, clamps, press } = bench.closing ?? {};
  const newton = (value: number): string => showQuantity(value, 'N', units);
  return [
    ...row('Each clamp holds.', show(clamps?.force, newton)),
    ...row('The press is rated for.', show(press?.force, newton)),
    ...row('Size of the bolts.', show(bolts, boltText)),
  ];
}

function heating({ mold: { bench, units } }: Build): Row[] {
  const { cure } = bench;
  return [
    ...row(
      'Platens or oven at.',
      show(cure?.temperatureC, (value) => showQuantity(value, 'C', units)),
    ),
    ...row(
      'Time at that temperature.',
      show(cure?.timeS, (value) => showQuantity(value, 's', units)),
    ),
  ];
}

/** What a figure is; of the lowest of several also which of them. */
function whatIs({ figures }: Report, name: FigureName): string {
  const by = figures.find((one) => one.name === name)?.by;
  const { means } = figureCatalogue[name];
  return by ? `${means} Here: ${figureCatalogue[by].label}.` : means;
}

/** What the plan gives and the figures of the whole mold that the report has. */
export function amounts(paper: Paper, build: Build, title: string): void {
  const columns: Column[] = [
    { title: 'figure', share: 0.6 },
    { title: 'value', share: 0.4, align: 'right' },
  ];
  for (const group of groups) {
    const rows = [
      ...(group.given?.(build) ?? []),
      ...group.names.flatMap((name) => {
        const value = figureText(build.report, name);
        return value === '-' ? [] : row(whatIs(build.report, name), value);
      }),
    ];
    if (rows.length === 0) continue;
    paper.section(group.title, title);
    paper.table(columns, rows, title);
    if (group.title === 'Closing the can')
      paper.paragraph(
        'Tightening torque: from the makers of the bolts and of the can. Bolts draw the can shut; clamps or a press carry the load.',
        title,
        { size: 2.6 },
      );
  }
  paper.paragraph('~: rests on an estimate, or on a value nobody has measured.', title, { size: 2.6 });
}

/** Rubber out under each master, and in at each build-up; the last row is all of them together. */
export function ledger(paper: Paper, mold: Mold, report: Report, title: string): void {
  const names = ['ledger.displaced', 'ledger.buildUp'] as const;
  const alike = new Map<string, string[]>();
  for (const { id } of mold.placements) {
    const [out, into] = names.map((name) => figureText(report, name, id));
    if (out === '-' && into === '-') continue;
    const key = `${out}\n${into}`;
    alike.set(key, [...(alike.get(key) ?? []), id]);
  }
  if (alike.size === 0) return;
  const [allOut, allIn] = names.map((name) => totalText(report, name));
  paper.section('Rubber ledger', title);
  paper.table(
    [
      { title: 'placement', share: 0.46 },
      { title: 'out, for each master', share: 0.27, align: 'right' },
      { title: 'in, at each build-up', share: 0.27, align: 'right' },
    ],
    [...[...alike].map(([key, ids]) => [runs(ids), ...key.split('\n')]), ['all together', allOut, allIn]],
    title,
  );
}

function totalText(report: Report, name: FigureName): string {
  const all = report.figures.filter((figure) => figure.name === name);
  if (all.length === 0) return '-';
  const mark = all.some(({ estimated }) => estimated) ? '~' : '';
  return `${mark}${showQuantity(
    all.reduce((sum, { value }) => sum + value, 0),
    'mm3',
    report.units,
  )}`;
}
