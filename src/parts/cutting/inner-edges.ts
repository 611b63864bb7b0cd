import { type Finding, finding } from '../../findings/index.ts';
import { inverse, movePoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type InnerRadius, innerRadii } from '../../mesh/index.ts';
import type { HalvesInput } from '../halves/index.ts';
import { type HalfName, halfToPrint } from '../making/index.ts';
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
export function sayInnerEdges(half: HalfName, mesh: TriangleMesh, halves: HalvesInput): Finding[] {
  const toMold = inverse(halfToPrint(half, halves.disc));
  const subjects = subjectAt(halves);
  const found = innerRadii(mesh, balls, (place) => subjects.at(movePoint(toMold, place)) ?? `${half}-half`);
  const cavities = new Set(halves.placements.map(({ id }) => id));
  const edges = [...found].map(([id, at]): Edge => ({ id, ...at, place: movePoint(toMold, at.place) }));
  const inside = edges.filter(({ id }) => cavities.has(id));
  const beside = edges.filter(({ id }) => !cavities.has(id));
  if (edges.length === 0) return [];
  const { place, radius } = tightestOf(inside.length > 0 ? inside : beside);
  const cavity = inside.length > 0 ? measuresOf(inside) : undefined;
  const other = beside.length > 0 ? measuresOf(beside) : undefined;
  return [
    finding('cutter.inner-radius', {
      subject: `${half}-half`,
      place,
      values: {
        which: cavity && other ? 'both' : cavity ? 'cavities' : 'beside',
        measured: radius,
        half,
        cavity: cavity?.id,
        cavityRadius: cavity?.radius,
        cavityBall: cavity?.ball,
        cavitySharp: cavity?.sharp,
        beside: other?.id === `${half}-half` ? undefined : other?.id,
        besidePlace: other?.place,
        besideRadius: other?.radius,
        besideBall: other?.ball,
        besideSharp: other?.sharp,
      },
    }),
  ];
}

interface Edge extends InnerRadius {
  readonly id: string;
  readonly place: Vec3;
}

const tightestOf = (edges: readonly Edge[]): Edge =>
  edges.reduce((tightest, edge) => (edge.radius < tightest.radius ? edge : tightest));

/** Where the tightest is, seen from above, with its radius and the ball that fits, or the length of all too sharp for one. */
function measuresOf(edges: readonly Edge[]) {
  const { id, place, radius } = tightestOf(edges);
  const at = { id, place: place.slice(0, 2) };
  return radius > 0
    ? { ...at, radius, ball: 2 * radius, sharp: undefined }
    : {
        ...at,
        radius: undefined,
        ball: undefined,
        sharp: edges.reduce((sum, edge) => sum + edge.sharp, 0),
      };
}
