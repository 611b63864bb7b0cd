/**
 * How well a built mold closes: `tsx bench/fit.ts presets/hedgerow`. For each master, from the solids as they are
 * exported (float32, printing orientation, brought back by their matrices): the volume it shares with the halves, the
 * volume round it that nothing fills (a box about it, less halves, master and channels), and its undercut with a flat
 * plane, as built, and irreducible; for each build-up its least distance to its master.
 */
import { openPlan } from '../cli/plan-files.ts';
import { boundsOf, moveMesh } from '../src/geometry/index.ts';
import { type Body, loadKernel, type Scope } from '../src/kernel/index.ts';
import { distanceTree, meshDistance } from '../src/mesh/measure/distance.ts';
import { flatPartingSurface, type Mold, masterOf, type Solid, undercut } from '../src/mold/index.ts';
import { channelBody } from '../src/parts/halves/channel-body.ts';
import { parts } from '../src/parts/index.ts';
import { readMold } from '../src/pipeline/index.ts';

const kernel = await loadKernel();
const { mold } = await readMold(await openPlan(process.argv[2] ?? 'presets/hedgerow'), kernel);
if (!mold) throw new Error('the plan cannot be read');

const solids = parts
  .filter(({ id }) => id === 'halves' || id === 'build-up')
  .flatMap((part) => part.units(mold).flatMap((unit) => unit.run({ kernel }).solids));
const inMold = ({ mesh, toMold }: Solid) => moveMesh(mesh, toMold);
const byId = (id: string): Solid => {
  const found = solids.find((solid) => solid.id === id);
  if (!found) throw new Error(`no solid ${id}`);
  return found;
};

const placedMesh = (mold: Mold, id: string) => {
  const placement = mold.placements.find((one) => one.id === id);
  if (!placement) throw new Error(`no placement ${id}`);
  return moveMesh(masterOf(mold, placement).mesh, placement.matrix);
};

/** The part of a box round the master that the closed mold leaves empty, and what the master shares with the halves. */
function fitOf(scope: Scope, id: string, halves: readonly Body[], channels: readonly Body[]) {
  const mesh = placedMesh(mold as Mold, id);
  const master = scope.fromMesh(mesh, id);
  const { min, max } = boundsOf(mesh.positions);
  const rim = 0.5;
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (bits) =>
      [0, 1, 2].map((axis) => ((bits >> axis) & 1 ? max[axis] + rim : min[axis] - rim)) as [
        number,
        number,
        number,
      ],
  );
  const box = scope.hull(corners, 'box');
  const near = halves.map((half) => scope.intersect([half, box], id));
  const overlap = near.reduce((sum, half) => sum + scope.intersect([half, master], id).volume(), 0);
  const others = (mold as Mold).placements
    .filter((other) => other.id !== id)
    .map((other) => scope.fromMesh(placedMesh(mold as Mold, other.id), other.id));
  const filled = scope.unite([...near.filter((half) => !half.isEmpty()), master, ...channels, ...others], id);
  const [, left] = scope.split(box, filled, id);
  return { overlap, gap: left.isEmpty() ? 0 : left.volume() };
}

const mm3 = (value: number): string => value.toFixed(6).padStart(11);
console.log('master                 overlap         gap   undercut flat  as built  irreducible, mm3');
const flat = flatPartingSurface(mold.disc.radius);
kernel.scope((outer) => {
  const halves = ['lower-half', 'upper-half'].map((id) => outer.fromMesh(inMold(byId(id)), id));
  const channels = mold.channels.map((channel) => channelBody(outer, channel, mold.parting));
  for (const { id } of mold.placements) {
    const { overlap, gap } = kernel.scope((scope) => fitOf(scope, id, halves, channels));
    const mesh = placedMesh(mold, id);
    const [plane, built] = [undercut(mesh, flat), undercut(mesh, mold.parting)];
    const total = (one: typeof built) => (one.below + one.above).toFixed(3).padStart(10);
    console.log(
      `${id.padEnd(18)} ${mm3(overlap)} ${mm3(gap)}     ${total(plane)} ${total(built)} ${built.irreducible.toFixed(3).padStart(10)}`,
    );
  }
});

console.log(`\nbuild-up               least distance to its master, mm (wanted ${mold.fixture.clearance})`);
for (const solid of solids.filter(({ role }) => role === 'build-up')) {
  const id = solid.subjects.find((subject) => mold.placements.some((one) => one.id === subject)) ?? '';
  const found = meshDistance(distanceTree(inMold(solid)), distanceTree(placedMesh(mold, id)), 10);
  console.log(
    `${solid.id.padEnd(22)} ${'distance' in found ? found.distance.toFixed(4) : 'beyond 10'}  ${id}`,
  );
}
