/**
 * Memory the kernel takes at most while both halves are cut, for each triangle of a master at each of its placements:
 * what `src/pipeline/fit-memory.ts` reckons with. `npx tsx bench/memory.ts [flat|curved] [edge] [placements]`; an edge of
 * 0.245 gives a master of 72 000 triangles, 28 of them 2 million.
 */
import { flatPartingSurface, type PartingSurface } from '../src/mold/index.ts';
import { cutHalves } from '../src/parts/halves/cut-halves.ts';
import { halvesInput } from '../src/parts/halves/halves.ts';
import { masterOf, ring } from '../tests/parts/example-masters.ts';
import { exampleMold } from '../tests/parts/example-mold.ts';
import { fineBunny } from './fine-bunny.ts';

let most = 0;
// The kernel's memory grows through this, whoever made it.
const grow = WebAssembly.Memory.prototype.grow;
WebAssembly.Memory.prototype.grow = function (pages) {
  const before = grow.call(this, pages);
  most = Math.max(most, this.buffer.byteLength);
  return before;
};

const [surface = 'curved', edge = '0.5', count = '12'] = process.argv.slice(2);
const mesh = await fineBunny(Number(edge));
most = 0;
const { loadKernel } = await import('../src/kernel/index.ts');
const kernel = await loadKernel();
const radius = 165;
const master = masterOf('bunny', mesh);
const inner = Math.round(Number(count) / 3);
const flat = flatPartingSurface(radius);
// Cut like a curved one, by one prism through the whole disc.
const parting: PartingSurface = surface === 'flat' ? flat : { ...flat, flat: false };
const mold = exampleMold({
  disc: { radius, lower: 14, upper: 20, rimChamfer: 0, label: '' },
  parting,
  masters: [master],
  placements: [...ring(master, inner, 75), ...ring(master, Number(count) - inner, 135)],
});
kernel.scope((scope) => {
  const { lower, upper } = cutHalves(scope, halvesInput(mold), { marks: false });
  scope.toMesh(lower);
  scope.toMesh(upper);
});
const placed = (mesh.triangles.length / 3) * Number(count);
console.log(
  `${surface}: ${placed} triangles placed, ${(most / 2 ** 20).toFixed(0)} MiB, ${(most / placed).toFixed(0)} bytes each`,
);
