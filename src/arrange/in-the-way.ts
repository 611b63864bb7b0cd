import { type Finding, finding } from '../findings/index.ts';
import { fixedWalls } from './judge.ts';
import type { Kind, Problem } from './problem.ts';

/** What keeps all from being laid out, known without a search. */
export function inTheWay({ ground, kinds, fixed }: Problem): Finding[] {
  const wanted = kinds.filter(({ count, more }) => count + more > 0);
  const { radius, rim, well, wall } = ground;
  if (!well) return [finding('arrange.no-sprue', { subject: 'plan' })];
  const [inner, outer] = [well.radius + well.limit, radius - rim];
  if (outer <= inner) {
    const values = { measured: outer, limit: inner };
    return [finding('arrange.no-ring', { subject: 'disc', values })];
  }
  const large = wanted.flatMap((kind) => tooLarge(kind, inner, outer));
  if (large.length > 0) return large;
  const collide = fixedWalls(fixed)
    .filter(({ measured }) => measured < wall)
    .map(({ one, other, measured }) =>
      finding('arrange.collide', { subject: one, values: { measured, limit: wall, other } }),
    );
  return [
    ...collide,
    ...tooManyGates(wanted, well.radius, ground.gateGap),
    ...tooMuch(wanted, inner, outer, wall),
  ];
}

function tooLarge({ id, shape }: Kind, inner: number, outer: number): Finding[] {
  const long = Math.max(
    ...shape.outline.map(([x, y]) => Math.max(...shape.outline.map(([u, v]) => Math.hypot(x - u, y - v)))),
  );
  const about = (which: 'long' | 'wide', measured: number, limit: number): Finding[] => [
    finding('arrange.too-large', { subject: id, values: { which, measured, limit } }),
  ];
  if (long > 2 * outer) return about('long', long, 2 * outer);
  const circle = 2 * (shape.circles[2] ?? 0);
  return circle > outer - inner ? about('wide', circle, outer - inner) : [];
}

/** Gates of the width of the narrowest: chords round the well, one for each gate and the gap beside it. */
function tooManyGates(kinds: readonly Kind[], well: number, gap: number): Finding[] {
  const gated = kinds.filter(({ gate }) => gate);
  const wanted = gated.reduce((sum, { count }) => sum + count, 0);
  const width = Math.min(...gated.map(({ gate }) => gate?.width ?? Number.POSITIVE_INFINITY));
  const half = (width + gap) / 2 / well;
  const limit = half < 1 ? Math.floor(Math.PI / Math.asin(half)) : 1;
  if (wanted <= limit) return [];
  return [finding('arrange.gates', { subject: 'sprue', values: { measured: wanted, limit, width } })];
}

/** By areas alone; of a circle with half a wall round it, the least that a wall adds to an area. */
function tooMuch(kinds: readonly Kind[], inner: number, outer: number, wall: number): Finding[] {
  const grown = ({ shape }: Kind): number => Math.PI * (Math.sqrt(shape.area / Math.PI) + wall / 2) ** 2;
  const taken = kinds.reduce((sum, kind) => sum + kind.count * grown(kind), 0);
  // Walls may reach past the ring by their half.
  const ring = Math.PI * ((outer + wall / 2) ** 2 - Math.max(0, inner - wall / 2) ** 2);
  if (taken <= ring) return [];
  return [finding('arrange.area', { subject: 'disc', values: { measured: taken / ring, limit: 1 } })];
}

/** Masters of one outline, which are laid as kinds of their own. */
export function alike(kinds: readonly Kind[]): Finding[] {
  return kinds.flatMap((kind, i) => {
    const other = kinds.slice(0, i).find((one) => isSame(one, kind));
    return other ? [finding('arrange.alike', { subject: kind.id, values: { other: other.id } })] : [];
  });
}

const isSame = (one: Kind, other: Kind): boolean =>
  one.shape.outline.length === other.shape.outline.length &&
  one.shape.outline.every(([x, y], k) => {
    const [u, v] = other.shape.outline[k];
    return Math.hypot(x - u, y - v) < 1e-6;
  });
