import type { FigureName, Report } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';
import { stockThicknesses } from '../tables/index.ts';
import { fixed, showQuantity } from '../wording/index.ts';

/** The thinnest stock each half of rubber can be taken of, and the cover it leaves. */
export function stockThatHolds(mold: Mold, report: Report): string | undefined {
  if (mold.process !== 'rubber') return undefined;
  const lower = halfOf('lower', mold, report);
  const upper = halfOf('upper', mold, report);
  if (!lower || !upper) return undefined;
  if (lower.stock === undefined || lower.stock !== upper.stock)
    return `${sayHalf('lower', lower)}; ${sayHalf('upper', upper)}`;
  const cover =
    lower.cover === upper.cover
      ? `${lower.cover} of cover each side`
      : `${lower.cover} of cover below, ${upper.cover} above`;
  return `${lower.stock} stock holds it: ${cover}`;
}

interface HalfStock {
  /** Left out where no stock is thick enough. */
  readonly stock?: string;
  readonly cover: string;
  readonly needed: string;
}

const sayHalf = (half: string, { stock, cover, needed }: HalfStock): string =>
  stock === undefined
    ? `no stock holds the ${half} half, which needs ${needed}`
    : `${stock} stock holds the ${half} half: ${cover} of cover`;

function halfOf(half: 'lower' | 'upper', { limits }: Mold, report: Report): HalfStock | undefined {
  const figureOf = (name: FigureName): number | undefined =>
    report.figures.find((figure) => figure.name === name)?.value;
  const needs = figureOf(`cover.needs-${half}`);
  if (needs === undefined) return undefined;
  const thickness = figureOf(`cover.stock-${half}`);
  const row = stockThicknesses.find((one) => one.thickness === thickness);
  const show = (mm: number): string => showQuantity(mm, 'mm', report.units);
  return {
    ...(row && {
      stock: report.units === 'inch' ? row.name : `${fixed(row.thickness, 2)} mm (${row.name})`,
    }),
    // What is needed is the reach and the cover that is wanted.
    cover: show((thickness ?? 0) - (needs - limits.cover)),
    needed: show(needs),
  };
}
