import { computed } from '@preact/signals';
import type { FigureName } from '../../findings/index.ts';
import { coveredFixtures } from '../../mold/index.ts';
import { mold, report } from './store.ts';

/** Something that stands into the halves, as the mold and the report have it; mm. */
export interface Reaching {
  readonly id: string;
  /** What it is, for its color. */
  readonly kind: 'master' | 'boss' | 'sprue form';
  readonly x: number;
  /** Half its width, seen from the side. */
  readonly reach: number;
  readonly lowest: number;
  readonly highest: number;
  /** Cover left to the outer faces; not known before the report is there. */
  readonly coverLower: number | undefined;
  readonly coverUpper: number | undefined;
  readonly estimated: boolean;
}

/** Masters in the plan's order, then what fixtures take out of the halves. */
export const reaching = computed<readonly Reaching[]>(() => {
  const now = mold.value;
  if (!now) return [];
  const covers = new Map(
    report.value?.figures.map(({ name, subject, value }) => [`${name} ${subject}`, value]),
  );
  const coverOf = (id: string) => {
    const of = (name: FigureName) => covers.get(`${name} ${id}`);
    return { coverLower: of('cover.lower'), coverUpper: of('cover.upper') };
  };
  const masters = now.placements.map(({ id, x, reach, lowest, highest, estimated }) => ({
    id,
    kind: 'master' as const,
    x,
    reach,
    lowest,
    highest,
    ...coverOf(id),
    estimated,
  }));
  const fixtures = coveredFixtures(now).map(({ id, kind, x, reach, depth, height }) => ({
    id,
    kind,
    x,
    reach,
    lowest: -depth,
    highest: height,
    ...coverOf(id),
    estimated: false,
  }));
  return [...masters, ...fixtures];
});

/** Covers of the halves it has anything in; what only touches the parting plane has nothing there to cover. */
export const coversOf = ({ lowest, highest, coverLower, coverUpper }: Reaching): readonly number[] =>
  [lowest < 0 ? coverLower : undefined, highest > 0 ? coverUpper : undefined].filter(
    (one) => one !== undefined,
  );

export const leastCover = (one: Reaching): number | undefined => {
  const covers = coversOf(one);
  return covers.length === 0 ? undefined : Math.min(...covers);
};

/** The next stock thickness of a half, and what asks for it; nothing where the process takes no stock. */
export const nextStock = (half: 'lower' | 'upper'): { thickness: number; drivenBy: string } | undefined => {
  const found = report.value?.figures.find(({ name }) => name === `cover.stock-${half}`);
  return found && { thickness: found.value, drivenBy: found.subject };
};
