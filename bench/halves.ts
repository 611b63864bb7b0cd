/**
 * Building both halves with 36 cavities of a 70 000-triangle mesh: the program against the tuned recipe written by
 * hand (bench/tuned-recipe.ts), in turn in one process; peak memory of each in a process of its own; and how the time
 * grows over 9, 18 and 36 placements. Run with `npx tsx bench/halves.ts`.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { segmentsFor, type TriangleMesh } from '../src/geometry/index.ts';
import { loadKernel } from '../src/kernel/index.ts';
import { flatPartingSurface, type Mold } from '../src/mold/index.ts';
import { halves } from '../src/parts/halves/halves.ts';
import { masterOf, ring } from '../tests/parts/example-masters.ts';
import { exampleMold, solidsOf } from '../tests/parts/example-mold.ts';
import { fineBunny } from './fine-bunny.ts';
import { growth } from './growth.ts';
import { loadRecipe, type RecipeInput, tunedHalves } from './tuned-recipe.ts';

const radius = 165;
const ratioAim = 1.2;
const growthAim = 1.1;

/** A bare disc, as the recipe makes it; the index marks are the program's own. */
function moldOf(mesh: TriangleMesh, count: number): Mold {
  const master = masterOf('bunny', mesh);
  const inner = Math.round(count / 3);
  const placements = [...ring(master, inner, 75), ...ring(master, count - inner, 135)];
  const { sprue: _, ...mold } = exampleMold({
    disc: { radius, lower: 14, upper: 20, rimChamfer: 0, label: '' },
    parting: flatPartingSurface(radius),
    masters: [master],
    placements,
  });
  return mold;
}

const recipeInput = ({ disc, placements, masters }: Mold): RecipeInput => ({
  master: masters[0].mesh,
  places: placements.map(({ matrix }) => ({
    x: matrix[12],
    y: matrix[13],
    turnRad: Math.atan2(matrix[1], matrix[0]),
  })),
  radius: disc.radius,
  segments: segmentsFor(disc.radius),
  lower: disc.lower,
  upper: disc.upper,
});

interface Contender {
  readonly name: string;
  make(mold: Mold): readonly TriangleMesh[];
}

async function contenders(): Promise<Record<'program' | 'tuned', Contender>> {
  const tools = { kernel: await loadKernel() };
  const wasm = await loadRecipe();
  return {
    program: { name: 'program', make: (mold) => solidsOf(halves, mold, tools).map(({ mesh }) => mesh) },
    tuned: { name: 'tuned recipe', make: (mold) => tunedHalves(wasm, recipeInput(mold)) },
  };
}

/** CPU seconds: other work on the machine does not count. */
function timed({ name, make }: Contender, mold: Mold): number {
  const start = performance.now();
  const cpu = process.cpuUsage();
  const made = make(mold);
  const wall = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const seconds = (user + system) / 1e6;
  const triangles = made.reduce((sum, { triangles: t }) => sum + t.length / 3, 0);
  console.log(
    `  ${name}, ${mold.placements.length} cavities: ${seconds.toFixed(2)} s of CPU, ${wall.toFixed(2)} s, ${triangles} triangles`,
  );
  return seconds;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const verdict = (value: number, aim: number): string =>
  `${value.toFixed(2)}, aim at most ${aim}: ${value <= aim ? 'met' : 'MISSED'}`;

function peakMegabytes(which: 'program' | 'tuned'): number {
  const child = spawnSync(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(import.meta.url), '--peak', which],
    { encoding: 'utf8' },
  );
  if (child.status !== 0) throw new Error(child.stderr);
  return Number(child.stdout.trim().split('\n').at(-1));
}

async function compare(): Promise<void> {
  const mesh = await fineBunny();
  console.log(`master: ${mesh.triangles.length / 3} triangles`);
  const { program, tuned } = await contenders();
  const mold = moldOf(mesh, 36);
  const times = { program: [] as number[], tuned: [] as number[] };
  for (let round = 0; round < 3; round++) {
    times.tuned.push(timed(tuned, mold));
    times.program.push(timed(program, mold));
  }
  console.log(`program to tuned recipe: ${verdict(median(times.program) / median(times.tuned), ratioAim)}`);
  const grown = [9, 18, 36].map((n) => {
    const few = moldOf(mesh, n);
    return [n, median([1, 2, 3].map(() => timed(program, few)))] as const;
  });
  console.log(`growth exponent over 9, 18, 36 placements: ${verdict(growth(grown), growthAim)}`);
  const [mine, theirs] = [peakMegabytes('program'), peakMegabytes('tuned')];
  console.log(`peak memory: program ${mine.toFixed(0)} MB, tuned recipe ${theirs.toFixed(0)} MB`);
}

async function peak(which: 'program' | 'tuned'): Promise<void> {
  const mold = moldOf(await fineBunny(), 36);
  timed((await contenders())[which], mold);
  console.log(process.resourceUsage().maxRSS / 1024);
}

const which = process.argv[2] === '--peak' ? process.argv[3] : undefined;
if (which === 'program' || which === 'tuned') await peak(which);
else await compare();
