import { boundsOf } from '../../geometry/index.ts';
import { runs } from '../../wording/index.ts';
import type { Build } from '../build.ts';
import { type Folder, folderOf } from '../folders.ts';
import { materialOf } from '../material-of.ts';
import type { CheckedSolid } from '../solid-file.ts';
import { type Listing, type Sizes, sizeText } from './listing.ts';
import { isBought } from './stock-to-take.ts';
import { weightText } from './weight.ts';

const columns = [
  { title: 'file', share: 0.23 },
  { title: 'make', share: 0.06, align: 'right' },
  { title: 'of', share: 0.11 },
  { title: 'size', share: 0.4 },
  { title: 'weight of one, solid', share: 0.2, align: 'right' },
] as const;

const makers = { print: 'To print', machine: 'To machine' } as const satisfies Partial<
  Record<Folder, string>
>;

/** What is made of the solids by folder, one row each; build-ups, of which there are many, by their size. */
export function solidsToMake(build: Build, sizes: Sizes): Listing[] {
  const made = build.solids.filter(({ solid }) => !isBought(solid, build.mold));
  const buildUps = made.filter(({ solid }) => solid.role === 'build-up');
  const listings = (['print', 'machine'] as const).map((folder) => ({
    title: `${makers[folder]}, in the folder ${folder}`,
    columns,
    rows: made
      .filter((one) => !buildUps.includes(one) && folderOf(one.solid, build.mold) === folder)
      .map((one) => rowOf(one, build, sizes)),
  }));
  return [
    ...listings,
    { title: 'Build-ups by size', columns, rows: byHeight(buildUps, build, sizes) },
  ].filter(({ rows }) => rows.length > 0);
}

function rowOf({ solid, audit }: CheckedSolid, { mold }: Build, sizes: Sizes): string[] {
  const material = materialOf(solid, mold);
  return [
    `${solid.id}.stl`,
    String(solid.count ?? 1),
    material,
    sizeText(sidesOf(solid), mold.units, sizes),
    weightText({ volume: audit.volume, estimated: solid.estimated }, material, mold),
  ];
}

function sidesOf({ mesh }: CheckedSolid['solid']): number[] {
  const { min, max } = boundsOf(mesh.positions);
  return max.map((high, axis) => high - min[axis]);
}

/** Build-ups whose heights are in one step of this, mm, stand in one row. Our own choice. */
const heightStep = 1;

/** Those of one material and about one height in one row, the highest first, by the largest of them. */
function byHeight(buildUps: readonly CheckedSolid[], build: Build, sizes: Sizes): string[][] {
  const groups = new Map<string, CheckedSolid[]>();
  const step = ({ solid }: CheckedSolid): number => Math.floor(sidesOf(solid)[2] / heightStep);
  for (const one of [...buildUps].sort((a, b) => step(b) - step(a))) {
    const key = `${step(one)} ${materialOf(one.solid, build.mold)}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((alike) => {
    const largest = alike.reduce((a, b) => (b.audit.volume > a.audit.volume ? b : a));
    const [file, , material, size, weight] = rowOf(largest, build, sizes);
    if (alike.length === 1) return [file, '1', material, size, weight];
    const [first, ...others] = runs(alike.map(({ solid }) => solid.id)).split('build-up-');
    return [
      `${first}build-up-${others.join('')}`,
      String(alike.length),
      material,
      `up to ${size}`,
      `up to ${weight}`,
    ];
  });
}
