import { type Finding, finding } from '../findings/index.ts';
import { inverse, movePoint, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { type InnerRadius, innerRadii } from '../mesh/index.ts';
import { type Half, halfToPrint } from './half.ts';
import type { HalvesInput } from './halves-bodies.ts';
import { subjectAt } from './subject-at.ts';

/**
 * Radii of ball ends, mm: less is no mill but a needle, more is no question. What is left within `finish` of an edge,
 * twice the chord error of round things, is rubbed off. Common practice, no published source.
 */
const balls = { least: 0.1, most: 6, finish: 0.02 } as const;

/**
 * How tight the inner edges of a rigid half are, which decides the last mill: in its cavities, and at bosses, channels
 * and the like. No finding where all of it takes the largest ball.
 */
export function sayInnerEdges(half: Half, mesh: TriangleMesh, halves: HalvesInput): Finding[] {
  const toMold = inverse(halfToPrint(half, halves.disc));
  const subjects = subjectAt(halves);
  const found = innerRadii(mesh, balls, (place) => subjects.at(movePoint(toMold, place)) ?? `${half}-half`);
  const cavities = new Set(halves.placements.map(({ id }) => id));
  const edges = [...found].map(([id, at]): Edge => ({ id, ...at, place: movePoint(toMold, at.place) }));
  const inside = edges.filter(({ id }) => cavities.has(id));
  const beside = edges.filter(({ id }) => !cavities.has(id));
  if (edges.length === 0) return [];
  const { place, radius } = tightestOf(inside.length > 0 ? inside : beside);
  return [
    finding('cutter.inner-radius', {
      subject: `${half}-half`,
      place,
      measured: { value: radius, unit: 'mm' },
      says: [
        ...(inside.length > 0 ? [`In the cavities of the ${half} half ${say(inside, half)}.`] : []),
        ...(beside.length > 0 ? [`Beside the cavities of the ${half} half ${say(beside, half)}.`] : []),
      ].join(' '),
    }),
  ];
}

interface Edge extends InnerRadius {
  readonly id: string;
  readonly place: Vec3;
}

const tightestOf = (edges: readonly Edge[]): Edge =>
  edges.reduce((tightest, edge) => (edge.radius < tightest.radius ? edge : tightest));

function say(edges: readonly Edge[], half: Half): string {
  const tightest = tightestOf(edges);
  const where = whereIs(tightest, half);
  if (tightest.radius > 0)
    return (
      `the tightest inner edge has a radius of ${tightest.radius.toFixed(2)} mm, ${where}: it takes a ball end mill ` +
      `of ${(2 * tightest.radius).toFixed(1)} mm at most`
    );
  const sharp = edges.reduce((sum, edge) => sum + edge.sharp, 0);
  return `${sharp.toFixed(sharp < 10 ? 1 : 0)} mm of inner edges run in sharper than any ball end mill, such as ${where}`;
}

const whereIs = ({ id, place: [x, y] }: Edge, half: Half): string =>
  id === `${half}-half` ? `at x ${x.toFixed(1)}, y ${y.toFixed(1)} mm` : `at ${id}`;
