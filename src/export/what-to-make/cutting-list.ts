import type { FigureName, Report, UnitSystem } from '../../findings/index.ts';
import { type Drawing, type Mold, sizeOf } from '../../mold/index.ts';
import { stockThicknesses } from '../../tables/index.ts';
import { showFigure, showQuantity } from '../../wording/index.ts';
import type { Build } from '../build.ts';
import { folderOfDrawing } from '../folders.ts';
import { both, inOrder } from '../shop-sheet/names.ts';
import { type Listing, type Sizes, sizeText } from './listing.ts';

/** A thickness in the plan finds its stock in spite of rounding, mm. */
const slack = 0.01;

/** Rubber to cut: a blank for each half, what is cut out of it, what its pockets and build-ups come to. */
export function rubberToCut({ mold, report }: Build, sizes: Sizes): Listing[] {
  const { process, placements } = mold;
  if (process !== 'rubber' || placements.length === 0) return [];
  return [
    {
      title: 'Rubber to cut',
      columns: [
        { title: 'cut', share: 0.05, align: 'right' },
        { title: 'piece', share: 0.2 },
        { title: 'size', share: 0.46 },
        { title: 'stock', share: 0.08 },
        { title: 'rubber', share: 0.21, align: 'right' },
      ],
      rows: [
        ...(['lower', 'upper'] as const).map((half) => blankRow(half, mold, report, sizes)),
        ...openings(mold, sizes),
        ...ledgerRow('cut out for the masters', 'ledger.displaced', report),
        ...ledgerRow('laid in at build-ups', 'ledger.buildUp', report),
      ],
    },
  ];
}

/** Its mass, or its volume where nobody knows how dense the rubber is. */
function blankRow(half: 'lower' | 'upper', { disc, units }: Mold, report: Report, sizes: Sizes): string[] {
  const thickness = disc[half];
  const stock = stockThicknesses.find((row) => Math.abs(row.thickness - thickness) < slack);
  const found = (['ledger.blankMass', 'ledger.blank'] as const)
    .flatMap((name) => report.figures.filter((one) => one.name === name))
    .find(({ subject }) => subject === `${half} half`);
  const length = lengthIn(units, sizes);
  return [
    '1',
    `blank, ${half} half`,
    `${length(2 * disc.radius)} across, ${length(thickness)} thick`,
    stock?.name ?? '-',
    found ? showFigure(found, units) : '-',
  ];
}

const lengthIn =
  (units: UnitSystem, sizes: Sizes) =>
  (mm: number): string =>
    sizes === 'both' ? both(units, mm) : inOrder(units, mm)[0];

function openings({ sprue, units }: Mold, sizes: Sizes): string[][] {
  if (!sprue) return [];
  const length = lengthIn(units, sizes);
  const { wellRadius, wellDepth, holeRadius } = sprue;
  return [
    ['1', 'well, lower half', `${length(2 * wellRadius)} across, ${length(wellDepth)} deep`, '', ''],
    ['1', 'hole, upper half', `${length(2 * holeRadius)} across at the parting face`, '', ''],
  ];
}

/** All placements together. */
function ledgerRow(piece: string, name: FigureName, { figures, units }: Report): string[][] {
  const some = figures.filter((one) => one.name === name);
  if (some.length === 0) return [];
  const mark = some.some(({ estimated }) => estimated) ? '~' : '';
  const total = some.reduce((sum, { value }) => sum + value, 0);
  return [[String(some.length), piece, 'all together', '', `${mark}${showQuantity(total, 'mm3', units)}`]];
}

/** What comes as a drawing alone, to be cut from sheet or paper. */
export function drawingsToCut(build: Build, sizes: Sizes): Listing[] {
  const rows = drawnAlone(build).map((drawing) => {
    const { min, max } = sizeOf(drawing);
    return [
      `${folderOfDrawing(drawing)}/${drawing.id}`,
      '1',
      sheetText(drawing, build.mold),
      sizeText([max[0] - min[0], max[1] - min[1]], build.mold.units, sizes),
    ];
  });
  if (rows.length === 0) return [];
  return [
    {
      title: 'To cut by a drawing',
      columns: [
        { title: 'file', share: 0.27 },
        { title: 'make', share: 0.07, align: 'right' },
        { title: 'of', share: 0.33 },
        { title: 'size', share: 0.33 },
      ],
      rows,
    },
  ];
}

const drawnAlone = ({ drawings, solids }: Build): Drawing[] =>
  drawings.filter(({ id }) => !solids.some(({ solid }) => isOf(solid.id, id)));

/** What is made as a solid, or else cut by its drawing; build-ups, of which there are many, in one. */
export const cutInstead = ({ drawings, solids }: Build): string[] => {
  const made = drawings.flatMap(({ id }) => solids.find(({ solid }) => isOf(solid.id, id)) ?? []);
  return [...new Set(made.map(({ solid }) => (solid.role === 'build-up' ? 'build-ups' : solid.id)))];
};

/** A solid too large for the bed is in pieces; that of a build-up is cut by its outline. */
const isOf = (solid: string, drawing: string): boolean =>
  solid === drawing || solid.startsWith(`${drawing}-piece-`) || drawing === `${solid}-outline`;

function sheetText({ material, thickness }: Drawing, { fixture, units }: Mold): string {
  const of = material ?? fixture.material;
  return thickness === undefined ? of : `${of}, ${both(units, thickness)}`;
}
