import { createRequire } from 'node:module';
import type { Vec3 } from '../../src/geometry/index.ts';
import { ball, box, mapped, type Shape, together, torus, without } from './rough-shapes.ts';

/** Masters as others sculpt them, made anew from a number: open bodies stuck into one another, fingers, shells. */
export type FigurineKind = 'open' | 'fingers' | 'coincident' | 'shells' | 'scan';
export const figurineKinds: readonly FigurineKind[] = ['open', 'fingers', 'coincident', 'shells', 'scan'];

/** Numbers from 0 up to 1, the same for the same seed (mulberry32, public domain). */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Random = () => number;

/** One figurine, 15 to 30 mm long, in mm. */
export function figurine(kind: FigurineKind, seed: number): Shape {
  const shape = makers[kind](randomOf(seed));
  const sides = [0, 1, 2].map((axis) => {
    const along = shape.points.map((p) => p[axis]);
    return Math.max(...along) - Math.min(...along);
  });
  const scale = (15 + 15 * randomOf(seed + 1)()) / Math.max(...sides);
  return mapped(shape, ([x, y, z]) => [x * scale, y * scale, z * scale]);
}

const makers: Record<FigurineKind, (random: Random) => Shape> = {
  open: (random) =>
    together(...several(2 + 3 * random(), () => opened(stuckIn(body(random), random, 0.7), random))),
  fingers: (random) => {
    const palm = mapped(ball(1, 24), ([x, y, z]) => [x, 0.8 * y, 0.5 * z]);
    const fingers = several(4 + 4 * random(), (i, count) => finger(random, (Math.PI * i) / count));
    return together(random() < 0.5 ? palm : opened(palm, random), ...fingers);
  },
  coincident: (random) => {
    const one = body(random);
    const off = [0, 1e-6, 1e-5, 1e-4][Math.floor(4 * random())];
    const again = mapped(one, ([x, y, z]) => [x + off, y + off * random(), z]);
    const beside = stuckIn(body(random), random, 0.8);
    return random() < 0.5 ? together(one, again, beside) : together(one, again, beside, beside);
  },
  shells: (random) => together(...several(50, () => stuckIn(body(random), random, 1.2, 0.5))),
  scan: (random) => rough(stuckBunny(random), random),
};

const several = (count: number, make: (i: number, count: number) => Shape): Shape[] =>
  Array.from({ length: Math.floor(count) }, (_, i) => make(i, Math.floor(count)));

/** A closed body about as large as a ball of radius 1. */
function body(random: Random): Shape {
  const which = Math.floor(4 * random());
  if (which === 0) return box([1.5, 1.2, 1], [-0.75, -0.6, -0.5]);
  if (which === 1) return torus(0.7, 0.3, 20, 10);
  const round = ball(1, which === 2 ? 16 : 24);
  return mapped(round, ([x, y, z]) => [x, 0.8 * y, 0.6 * z]);
}

/** Turned at random about all axes, shifted by up to `by`, sized between half and whole. */
function stuckIn(shape: Shape, random: Random, by: number, least = 0.5): Shape {
  const [a, b, c] = [random(), random(), random()].map((share) => 2 * Math.PI * share);
  const size = least + (1 - least) * random();
  const at = [0, 0, 0].map(() => by * (2 * random() - 1));
  return mapped(shape, (p) => {
    const [x, y, z] = turned(turned(turned(p, 0, a), 1, b), 2, c);
    return [size * x + at[0], size * y + at[1], size * z + at[2]];
  });
}

function turned(p: Vec3, axis: number, angle: number): Vec3 {
  const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
  const q: [number, number, number] = [...p];
  q[i] = p[i] * Math.cos(angle) - p[j] * Math.sin(angle);
  q[j] = p[i] * Math.sin(angle) + p[j] * Math.cos(angle);
  return q;
}

/** Without the faces of a cap, as where a sculptor stuck it into something. */
function opened(shape: Shape, random: Random): Shape {
  const gone = Math.floor(random() * shape.faces.length * 0.4);
  const start = Math.floor(random() * (shape.faces.length - gone));
  return without(shape, (face) => face >= start && face < start + gone);
}

/** Long, thin, close to its neighbors, its root in the palm, half of them open there. */
function finger(random: Random, turn: number): Shape {
  const open = random() < 0.5;
  const [thick, long] = [0.06 + 0.08 * random(), 1 + 0.5 * random()];
  const rod = mapped(ball(1, 12), ([x, y, z]) => [0.4 + long * (0.5 + 0.5 * x), thick * y, thick * z]);
  const whole = open ? without(rod, (face) => rod.faces[face].some((v) => rod.points[v][0] < 0.5)) : rod;
  const spread = 0.35 * (turn - Math.PI / 2) + 0.05 * (random() - 0.5);
  return mapped(whole, (p) => turned(p, 2, spread));
}

function stuckBunny(random: Random): Shape {
  const { positions, cells } = createRequire(import.meta.url)('bunny') as {
    positions: Vec3[];
    cells: [number, number, number][];
  };
  const bunny = mapped({ points: positions, faces: cells }, ([x, y, z]) => [x / 5, y / 5, z / 5]);
  return together(bunny, stuckIn(body(random), random, 0.6));
}

/** Points off by up to the length of an edge, as scanned, so that folds come about. */
function rough(shape: Shape, random: Random): Shape {
  const by = 0.01 + 0.07 * random();
  return mapped(shape, ([x, y, z]) => [x + off(by, random), y + off(by, random), z + off(by, random)]);
}

const off = (by: number, random: Random): number => by * (random() + random() - 1);
