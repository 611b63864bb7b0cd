// Import of a mesh of a million triangles, against reading + joining equal points + one kernel construction in the
// same process; and the peak memory of each, in a process of its own. Run: npx tsx bench/import.ts
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { loadKernel } from '../src/kernel/index.ts';
import { type RawMesh, readMesh, repairMesh } from '../src/mesh/index.ts';
import { weldEqual } from '../src/mesh/repair/weld.ts';

const around = 1000;
const rings = 501;

/** A wavy ball about 50 mm across as a binary STL, with 2 x around x (rings - 1) triangles. */
function wavyBall(spoil: (face: number) => 'keep' | 'drop' | 'flip' | 'double'): Uint8Array {
  const faces: number[] = [];
  const on = (j: number, i: number): number =>
    j <= 0 ? 0 : j >= rings ? 1 : 2 + (j - 1) * around + (i % around);
  let asked = 0;
  const add = (a: number, b: number, c: number): void => {
    const what = spoil(asked++);
    if (what !== 'drop') faces.push(a, ...(what === 'flip' ? [c, b] : [b, c]));
    if (what === 'double') faces.push(a, b, c);
  };
  for (let j = 0; j < rings; j++) {
    for (let i = 0; i < around; i++) {
      if (j > 0) add(on(j, i), on(j, i + 1), on(j + 1, i + 1));
      if (j < rings - 1) add(on(j, i), on(j + 1, i + 1), on(j + 1, i));
    }
  }
  const positions = points();
  const bytes = new Uint8Array(84 + (faces.length / 3) * 50);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, faces.length / 3, true);
  for (let h = 0; h < faces.length; h++) {
    const at = 84 + Math.floor(h / 3) * 50 + 12 + (h % 3) * 12;
    for (let axis = 0; axis < 3; axis++) view.setFloat32(at + axis * 4, positions[faces[h] * 3 + axis], true);
  }
  return bytes;
}

function points(): Float64Array {
  const positions = new Float64Array((2 + (rings - 1) * around) * 3);
  const put = (v: number, latitude: number, turn: number): void => {
    const r = 25 * (1 + 0.1 * Math.sin(7 * turn) * Math.cos(latitude) ** 4 * Math.sin(5 * latitude));
    positions[v * 3] = r * Math.cos(latitude) * Math.cos(turn);
    positions[v * 3 + 1] = r * Math.cos(latitude) * Math.sin(turn);
    positions[v * 3 + 2] = r * Math.sin(latitude);
  };
  put(0, -Math.PI / 2, 0);
  put(1, Math.PI / 2, 0);
  for (let j = 1; j < rings; j++) {
    for (let i = 0; i < around; i++) {
      put(2 + (j - 1) * around + i, -Math.PI / 2 + (Math.PI * j) / rings, (2 * Math.PI * i) / around);
    }
  }
  return positions;
}

const inputs = {
  clean: () => wavyBall(() => 'keep'),
  // A thousand holes, flipped and doubled faces each.
  spoiled: () =>
    wavyBall((face) =>
      face % 1009 === 0 ? 'drop' : face % 1013 === 0 ? 'flip' : face % 1019 === 0 ? 'double' : 'keep',
    ),
};

const kernel = await loadKernel();

function read(bytes: Uint8Array): RawMesh {
  const { mesh, findings } = readMesh(bytes, 'bench.stl');
  if (!mesh) throw new Error(findings.map(({ code }) => code).join(' '));
  return mesh;
}

const cases = {
  baseline: () => {
    const bytes = inputs.clean();
    return timed(() => {
      const { positions, triangles } = read(bytes);
      const welded = weldEqual({ positions: Float32Array.from(positions), triangles });
      kernel.scope((scope) => scope.fromExactMesh(welded, 'bench').numTri());
      return '';
    });
  },
  clean: () => imported(inputs.clean()),
  repaired: () => imported(inputs.spoiled()),
};

function imported(bytes: Uint8Array) {
  return timed(() => {
    const { mesh, changes } = repairMesh(read(bytes), { subject: 'bench', unit: 'mm' }, kernel);
    if (!mesh || changes.remeshEdge !== undefined) throw new Error('not mended face by face');
    return `${mesh.triangles.length / 3} triangles out, repairs ${JSON.stringify(changes.counts)}`;
  });
}

/** Median of three runs, ms. */
function timed(work: () => string): { ms: number; note: string } {
  const times: number[] = [];
  let note = '';
  for (let n = 0; n < 3; n++) {
    const start = performance.now();
    note = work();
    times.push(performance.now() - start);
  }
  return { ms: times.sort((a, b) => a - b)[1], note };
}

const only = process.argv[2] as keyof typeof cases | undefined;
if (only) {
  cases[only]();
  console.log(process.resourceUsage().maxRSS);
} else {
  const bytes = inputs.clean().length;
  console.log(`${(bytes - 84) / 50} triangles, ${(bytes / 1e6).toFixed(1)} MB of binary STL`);
  const baseline = cases.baseline();
  for (const name of ['baseline', 'clean', 'repaired'] as const) {
    const { ms, note } = name === 'baseline' ? baseline : cases[name]();
    const child = spawnSync(process.execPath, [...process.execArgv, fileURLToPath(import.meta.url), name], {
      encoding: 'utf8',
    });
    const peak = (Number(child.stdout) * 1024) / bytes;
    console.log(
      `${name}: ${ms.toFixed(0)} ms, ${(ms / baseline.ms).toFixed(2)} x baseline, ` +
        `peak memory ${((peak * bytes) / 1e6).toFixed(0)} MB, ${peak.toFixed(1)} x input ${note}`,
    );
  }
}
