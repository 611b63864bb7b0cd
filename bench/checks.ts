/**
 * All checks on 36 placements of a 70 000-triangle mesh: each check's time and share, how the time grows over 9, 18
 * and 36 placements, the walls between cavities against a plain all-pairs query, and one moved placement checked
 * again against a full run. Run with `npx tsx bench/checks.ts`.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { BufferAttribute, BufferGeometry, Matrix4 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { checks } from '../src/checks/index.ts';
import { wallsBetweenCavities } from '../src/checks/walls/walls.ts';
import { writeStl } from '../src/export/index.ts';
import type { TriangleMesh } from '../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../src/kernel/index.ts';
import type { Check, Mold, Tools } from '../src/mold/index.ts';
import { Cache, checkMold, readMold } from '../src/pipeline/index.ts';
import { memoizeIn } from '../src/pipeline/memoize-in.ts';
import { fineBunny } from './fine-bunny.ts';
import { growth } from './growth.ts';

const growthAim = 1.2;
const wallsAim = 0.3;
const movedAim = 0.1;

const demo = readFileSync(fileURLToPath(new URL('../presets/hedgerow/plan.yaml', import.meta.url)), 'utf8');

/** The demo's plan with bunnies on two circles of a wider disc; `moved` shifts the first of them by 1 mm. */
function planOf(count: number, moved = false): string {
  const inner = Math.round(count / 3);
  const rings = [
    { count: inner, radius: 75, start: 0 },
    { count: count - inner, radius: 135, start: 5 },
  ].flatMap((ring) =>
    Array.from({ length: ring.count }, (_, i) => {
      const shift = moved && i === 0 && ring.radius === 75 ? 1 : 0;
      const angle = ring.start + (i * 360) / ring.count;
      return `  - { master: bunny, at: { radius: ${ring.radius + shift}, angle: ${angle} }, sink: 10 }`;
    }),
  );
  const without = ['masters', 'placements', 'supports', 'gates', 'vents', 'disc', 'can'];
  const kept = demo
    .split(/^(?=[a-z]\w*:)/m)
    .filter((section) => !without.some((name) => section.startsWith(`${name}:`)));
  return [
    ...kept,
    'disc: { diameter: 340, lower: 16, upper: 22 }',
    'can: { diameter: 341.5, depth: 39, spew: open }',
    'masters:\n  bunny: { file: bunny.stl, unit: mm, material: pewter }',
    `placements:\n${rings.join('\n')}`,
    'supports: auto',
    'gates: straight',
    '',
  ].join('\n');
}

async function moldOf(kernel: Kernel, mesh: TriangleMesh, text: string, cache: Cache): Promise<Mold> {
  const bytes = writeStl(mesh, 'bunny');
  const { mold, findings } = await readMold(
    {
      bytes: new TextEncoder().encode(text),
      name: 'plan.yaml',
      files: async () => ({ bytes, name: 'bunny.stl', outside: false }),
    },
    kernel,
    { cache },
  );
  if (!mold) throw new Error(findings.map(({ code }) => code).join('\n'));
  return mold;
}

/** CPU seconds: other work on the machine does not count. */
function cpu(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const runCheck = (check: Check, mold: Mold, tools: Tools): void => {
  for (const unit of check.units(mold)) unit.run(tools);
};

const verdict = (value: number, aim: number): string =>
  `${value.toFixed(2)}, aim at most ${aim}: ${value <= aim ? 'met' : 'MISSED'}`;

/** Every pair by the library's own query, nothing left out beforehand, on a tree made once. */
function allPairs({ masters, placements }: Mold): void {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(masters[0].mesh.positions, 3));
  geometry.setIndex(new BufferAttribute(masters[0].mesh.triangles.slice(), 1));
  const bvh = new MeshBVH(geometry);
  geometry.boundsTree = bvh;
  for (const [i, a] of placements.entries()) {
    const toA = new Matrix4().fromArray(a.matrix).invert();
    for (const b of placements.slice(i + 1))
      bvh.closestPointToGeometry(geometry, new Matrix4().fromArray(b.matrix).premultiply(toA));
  }
}

const kernel = await loadKernel();
const mesh = await fineBunny();
console.log(`master: ${mesh.triangles.length / 3} triangles`);

const reading = new Cache();
const mold = await moldOf(kernel, mesh, planOf(36), reading);
checkMold(mold, [], kernel);
const memoize = memoizeIn(new Cache());
const times = checks.map(
  (check) => [check.title, cpu(() => runCheck(check, mold, { kernel, memoize }))] as const,
);
const sum = times.reduce((all, [, seconds]) => all + seconds, 0);
for (const [title, seconds] of [...times].sort((a, b) => b[1] - a[1]))
  console.log(
    `  ${title.padEnd(44)} ${seconds.toFixed(2).padStart(7)} s  ${((100 * seconds) / sum).toFixed(1).padStart(5)} %`,
  );
console.log(`  all checks, 36 placements: ${sum.toFixed(2)} s of CPU`);

const grown: [number, number][] = [];
for (const count of [9, 18, 36]) {
  const few = count === 36 ? mold : await moldOf(kernel, mesh, planOf(count), reading);
  grown.push([count, cpu(() => checkMold(few, [], kernel))]);
}
console.log(grown.map(([count, seconds]) => `  ${count} placements: ${seconds.toFixed(2)} s`).join('\n'));
console.log(`growth exponent over 9, 18, 36 placements: ${verdict(growth(grown), growthAim)}`);

// On nine: all pairs of 36 take five minutes.
const nine = await moldOf(kernel, mesh, planOf(9), reading);
const ours = cpu(() => runCheck(wallsBetweenCavities, nine, { kernel }));
const plain = cpu(() => allPairs(nine));
console.log(`  9 placements: walls ${ours.toFixed(2)} s, all pairs ${plain.toFixed(2)} s`);
console.log(`walls to all pairs: ${verdict(ours / plain, wallsAim)}`);

const cache = new Cache(100_000);
const full = cpu(() => checkMold(mold, [], kernel, { cache }));
const next = await moldOf(kernel, mesh, planOf(36, true), reading);
const again = cpu(() => checkMold(next, [], kernel, { cache }));
console.log(`  full run ${full.toFixed(2)} s, one moved ${again.toFixed(2)} s`);
console.log(`one moved placement to a full run: ${verdict(again / full, movedAim)}`);
