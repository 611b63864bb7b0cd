/**
 * How long arranging takes: the demo's 24 on 250 mm, 12 large and 20 odd lots on 9 in, 36 on 12 in; how one sum of broken limits grows
 * with the number of pieces, and what it takes against a plain pass over all pairs of outline points. CPU time of the
 * process, so that other work on the machine does not count. Run with `npx tsx bench/arrange.ts`; with a folder behind it each layout is
 * drawn into it as SVG.
 */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { type Arranged, arrange } from '../src/arrange/arrange.ts';
import { efforts } from '../src/arrange/lay-out.ts';
import { problemOf } from '../src/arrange/of-plan.ts';
import { orbitsOf, type Problem } from '../src/arrange/problem.ts';
import { randomFrom } from '../src/arrange/random.ts';
import { search } from '../src/arrange/search.ts';
import { Strain } from '../src/arrange/strain.ts';
import type { Point2 } from '../src/geometry/index.ts';
import { loadKernel } from '../src/kernel/index.ts';
import { placeMold, readMasters } from '../src/pipeline/index.ts';
import { type Plan, readPlan } from '../src/plan/index.ts';

type Pieces = NonNullable<Plan['arrange']>['pieces'];

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const folder = new URL('../presets/hedgerow/', import.meta.url);
const bytes = (name: string) => new Uint8Array(readFileSync(new URL(name, folder)));
const source = {
  bytes: bytes('plan.yaml'),
  name: 'plan.yaml',
  files: async (name: string) => ({ bytes: bytes(name), name, outside: false }),
};

/** The demo on another disc, with other pieces and without what was placed by hand; large discs with a wider well. */
function planOf(diameter: string, pieces: string): Plan {
  const text = new TextDecoder()
    .decode(source.bytes)
    .replace('diameter: 250\n', `diameter: ${diameter}\n`)
    .replace(/\nplacements:[\s\S]*?\n# Cap nuts/, `\narrange: { pieces: ${pieces} }\n# Cap nuts`);
  const { plan, findings } = readPlan(text, 'plan.yaml');
  if (!plan) throw new Error(JSON.stringify(findings));
  return plan;
}

const charms =
  'ivy-leaf: { count: 3 }, fern-frond: { count: 3 }, beetle: { count: 3 }, seed-head: { count: 3 }';
const cases = [
  ['demo-24-on-250', '250', `{ ${charms}, snail-shell: { count: 6 }, oak-button: { count: 6 } }`],
  [
    'order-12-and-odd-lots-on-9-in',
    '9 in',
    `{ ${charms}, snail-shell: { count: fill the gaps, most: 10 }, oak-button: { count: fill the gaps, most: 10 } }`,
  ],
  [
    'all-36-on-12-in',
    '12 in',
    '{ ivy-leaf: { count: 6 }, fern-frond: { count: 6 }, beetle: { count: 6 }, seed-head: { count: 6 }, snail-shell: { count: 6 }, oak-button: { count: 6 } }',
  ],
] as const;

const { masters } = await readMasters(source, await loadKernel());
if (!masters) throw new Error('the demo cannot be read');

for (const [name, diameter, pieces] of cases) {
  const plan = planOf(diameter, pieces);
  const { mold } = placeMold(plan, masters, []);
  const begin = cpuMs();
  const wish = plan.arrange as { readonly pieces: Pieces } & NonNullable<Plan['arrange']>;
  const problem = problemOf(plan, mold, wish);
  const shaped = cpuMs();
  const first = firstLegal(problem);
  const found = cpuMs();
  const done = arrange(problem, { effort: efforts.usual, seed: 1 });
  const all = cpuMs() - found;
  const count = done.laid.reduce((sum, { copies }) => sum + copies, 0);
  console.log(
    `${name}: ${count} laid, ${done.left.reduce((sum, one) => sum + one.count, 0)} left, wall ${done.wall.toFixed(2)} mm, ${done.moves} moves`,
  );
  console.log(
    `  shapes ${ms(shaped - begin)}, first legal ${ms(found - shaped)}${first ? '' : ' (not found)'}, good ${ms(all)} (aims: 1 s, 10 s)`,
  );
  const [into] = process.argv.slice(2);
  if (into) {
    mkdirSync(into, { recursive: true });
    writeFileSync(`${into}/${name}.svg`, drawn(problem, done));
  }
}

growthOf();

function ms(value: number): string {
  return `${Math.round(value)} ms`;
}

function firstLegal(problem: Problem): boolean {
  const orbits = problem.kinds.flatMap((kind) => orbitsOf(kind, kind.count, 3));
  return search(new Strain(problem, orbits, 0.12), randomFrom(1), efforts.usual).value < 1e-4;
}

/** One sum for 24 and for 48 pieces as thickly laid, against a plain pass over the same pieces. */
function growthOf(): void {
  const base = planOf('250', cases[0][2]);
  const { mold } = placeMold(base, masters ?? [], []);
  const times = [24, 48].map((count) => {
    const problem = problemOf(base, mold, base.arrange as NonNullable<Plan['arrange']>);
    const radius = 125 * Math.sqrt(count / 24);
    const kinds = problem.kinds.map((kind) => ({ ...kind, count: (kind.count * count) / 24 }));
    const wide = { ...problem, kinds, ground: { ...problem.ground, radius }, fixed: [] };
    const strain = new Strain(
      wide,
      wide.kinds.flatMap((kind) => orbitsOf(kind, kind.count, 1)),
      0.12,
    );
    const random = randomFrom(1);
    const { x } = search(strain, random, { starts: 1, movesEach: 0, moves: 0 });
    const slopes = new Float64Array(x.length);
    return [timed(() => strain.at(x, slopes)), timed(() => plainPass(wide, x))];
  });
  const [[few, plainFew], [many, plainMany]] = times;
  console.log(
    `one sum: ${few.toFixed(3)} ms for 24, ${many.toFixed(3)} ms for 48, exponent ${Math.log2(many / few).toFixed(2)} (aim 1.3); against a plain pass over all pairs ${(few / plainFew).toFixed(2)} and ${(many / plainMany).toFixed(2)}`,
  );
}

/** All outline points against all others. */
function plainPass({ kinds }: Problem, x: Float64Array): number {
  const points = kinds
    .flatMap((kind) => Array.from({ length: kind.count }, () => kind))
    .map(({ shape }, i) => {
      const [c, s] = [Math.cos(x[4 * i + 2]), Math.sin(x[4 * i + 2])];
      const { circles } = shape;
      return Float64Array.from({ length: (circles.length / 3) * 2 }, (_, k) => {
        const [u, v] = [circles[(k >> 1) * 3], circles[(k >> 1) * 3 + 1]];
        return k % 2 === 0 ? x[4 * i] + c * u - s * v : x[4 * i + 1] + s * u + c * v;
      });
    });
  let least = Number.POSITIVE_INFINITY;
  for (const [i, one] of points.entries())
    for (const other of points.slice(i + 1))
      for (let a = 0; a < one.length; a += 2)
        for (let b = 0; b < other.length; b += 2) {
          const square = (one[a] - other[b]) ** 2 + (one[a + 1] - other[b + 1]) ** 2;
          if (square < least) least = square;
        }
  return least;
}

function timed(work: () => unknown): number {
  for (let k = 0; k < 20; k++) work();
  const begin = cpuMs();
  let runs = 0;
  while (cpuMs() - begin < 300) {
    work();
    runs++;
  }
  return (cpuMs() - begin) / runs;
}

function drawn({ ground, fixed }: Problem, { laid }: Arranged): string {
  const path = (ring: readonly Point2[], [x, y]: Point2, turn: number): string => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return `M${ring.map(([u, v]) => `${(x + c * u - s * v).toFixed(2)},${(y + s * u + c * v).toFixed(2)}`).join('L')}Z`;
  };
  const colors = ['#8fbf8f', '#8fb3d9', '#d9b38c', '#c9a0c9', '#d9d08c', '#a0c9c0'];
  const kinds = [...new Set(laid.map(({ kind }) => kind))];
  const pieces = laid.flatMap(({ kind, copies, radius, angleRad, turnRad, leanRad, mouth }) =>
    Array.from({ length: copies }, (_, k) => {
      const angle = angleRad + (2 * Math.PI * k) / copies;
      const at: Point2 = [radius * Math.cos(angle), radius * Math.sin(angle)];
      const color = colors[kinds.indexOf(kind) % colors.length];
      const outline = `<path d="${path(kind.shape.outline, at, angle + turnRad)}" fill="${color}" stroke="#333" stroke-width="0.3"/>`;
      const within = kind.gate?.mouths[mouth].within;
      if (!within || !ground.well || !kind.gate) return outline;
      const [c, s] = [Math.cos(angle + turnRad), Math.sin(angle + turnRad)];
      const [gx, gy] = [at[0] + c * within[0] - s * within[1], at[1] + s * within[0] + c * within[1]];
      const far = Math.hypot(gx, gy);
      const length =
        far * Math.cos(leanRad) - Math.sqrt(ground.well.radius ** 2 - (far * Math.sin(leanRad)) ** 2);
      const way = Math.atan2(-gy, -gx) - leanRad;
      return `${outline}<line x1="${gx}" y1="${gy}" x2="${gx + length * Math.cos(way)}" y2="${gy + length * Math.sin(way)}" stroke="#c33" stroke-opacity="0.6" stroke-width="${kind.gate.width}"/>`;
    }),
  );
  const still = fixed.map(
    ({ shape, x, y, turnRad }) => `<path d="${path(shape.outline, [x, y], turnRad)}" fill="#999"/>`,
  );
  const r = ground.radius;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-r - 2} ${-r - 2} ${2 * r + 4} ${2 * r + 4}" width="900" height="900"><g transform="scale(1,-1)"><rect x="${-r - 2}" y="${-r - 2}" width="${2 * r + 4}" height="${2 * r + 4}" fill="#fff"/><circle r="${r}" fill="#f4f0ea" stroke="#333" stroke-width="0.5"/><circle r="${r - ground.rim}" fill="none" stroke="#bbb" stroke-width="0.3" stroke-dasharray="2"/><circle r="${ground.well?.radius ?? 0}" fill="#ddd" stroke="#333" stroke-width="0.3"/>${still.join('')}${pieces.join('')}</g></svg>`;
}
