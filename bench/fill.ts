/**
 * How long the forecast of filling takes against plain floods of the same cells in the same run, how it grows with the number of
 * cells, and what it holds in memory for each. The demo's cavities at 0.25 mm, 36 of them. CPU time of the process, so that
 * other work on the machine does not count. Run with `npx tsx bench/fill.ts`.
 */

import { readFileSync } from 'node:fs';
import { type Cells, cellsOf, isTooFine, sides, wall } from '../src/fill/cells.ts';
import type { Conditions, Port } from '../src/fill/conditions.ts';
import { emptyRoom } from '../src/fill/empty-room.ts';
import { escapeRanks } from '../src/fill/escape.ts';
import { fillFrom } from '../src/fill/fill-order.ts';
import { forecastRoom } from '../src/fill/forecast.ts';
import { rankCells } from '../src/fill/potential.ts';
import { sealsOf } from '../src/fill/seals.ts';
import { compose, moveMesh, rotation, type TriangleMesh, translation } from '../src/geometry/index.ts';
import { loadKernel } from '../src/kernel/index.ts';
import { readMasters } from '../src/pipeline/index.ts';
import { growth } from './growth.ts';

/** Aims: floods for the core (ranks, order, ways out) and for all; exponent over cells; bytes for each cell. */
const aims = { core: 30, whole: 100, exponent: 1.25, bytes: 200 };
const cavities = 36;
const cell = 0.25;

const conditions: Conditions = {
  field: { speedRpm: 480, gravity: 9.80665 },
  metal: { densityKgM3: 7300, tensionNM: 0.55 },
  wellLevel: 24,
  flow: 400,
};

async function masters(): Promise<TriangleMesh[]> {
  const folder = new URL('../presets/hedgerow/', import.meta.url);
  const bytes = (name: string) => new Uint8Array(readFileSync(new URL(name, folder)));
  const source = {
    bytes: bytes('plan.yaml'),
    name: 'plan.yaml',
    files: async (name: string) => ({ bytes: bytes(name), name, outside: false }),
  };
  const { masters: read } = await readMasters(source, await loadKernel());
  if (!read) throw new Error('the demo cannot be read');
  return read.map(({ mesh }) => mesh);
}

function cut(mesh: TriangleMesh, edge: number): Cells {
  const cells = cellsOf(mesh, edge);
  if (isTooFine(cells)) throw new Error(`${cells.wouldFit} mm would fit`);
  return cells;
}

/** Metal comes in where the cavity is nearest to the axis. */
function gateOf(cells: Cells): Port {
  const { potential, byRank } = rankCells(cells, conditions.field);
  const top = potential[byRank[cells.count - 1]];
  const mouth = byRank.filter((c) => potential[c] > top - 2 * Math.sqrt(-top) * 1);
  return { id: 'gate', kind: 'gate', cells: [...mouth], width: 3, depth: 1.5 };
}

/** Each cell once, in the order it is come to. */
function flood({ count, beside }: Cells): number {
  const seen = new Uint8Array(count);
  const queue = new Int32Array(count);
  let total = 0;
  for (let first = 0; first < count; first++) {
    if (seen[first] !== 0) continue;
    let [head, tail] = [0, 0];
    seen[first] = 1;
    queue[tail++] = first;
    while (head < tail) {
      const c = queue[head++];
      for (let s = sides * c; s < sides * c + sides; s++) {
        const n = beside[s];
        if (n === wall || seen[n] !== 0) continue;
        seen[n] = 1;
        queue[tail++] = n;
      }
    }
    total += tail;
  }
  return total;
}

function core(cells: Cells, gate: Port): void {
  const ranks = rankCells(cells, conditions.field);
  const filling = fillFrom(cells, ranks, [gate.cells[0]]);
  escapeRanks(cells, sealsOf(cells, filling, [], [gate]), gate.cells);
}

/** CPU time of one go, s; the least of some. */
function timeOf(goes: number, work: () => unknown): number {
  let least = Number.POSITIVE_INFINITY;
  for (let go = 0; go < goes; go++) {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1e6);
  }
  return least;
}

const meshes = await masters();
const placed = Array.from({ length: cavities }, (_, k) =>
  moveMesh(
    meshes[k % meshes.length],
    compose(rotation('z', (k * 2 * Math.PI) / 7), translation(70 + (k % 5) * 5, 0, 0)),
  ),
);
const grids = placed.map((mesh) => cut(mesh, cell));
const gates = grids.map(gateOf);
const all = (work: (cells: Cells, gate: Port) => unknown) => () =>
  grids.forEach((cells, k) => void work(cells, gates[k]));
const count = grids.reduce((sum, one) => sum + one.count, 0);
// Once to warm up.
all(core)();
const floods = timeOf(9, all(flood));
const times = {
  core: timeOf(3, all(core)),
  whole: timeOf(
    2,
    all((cells, gate) => forecastRoom(emptyRoom(cells, conditions), [gate])),
  ),
};
const cutting = timeOf(1, () => placed.map((mesh) => cut(mesh, cell)));
console.log(
  `${cavities} cavities at ${cell} mm, ${count} cells; a plain flood of all ${(1000 * floods).toFixed(1)} ms`,
);
console.log(`cutting into cells ${cutting.toFixed(2)} s, ${(cutting / floods).toFixed(0)} floods`);
for (const what of ['core', 'whole'] as const)
  console.log(
    `${what}: ${times[what].toFixed(3)} s, ${(times[what] / floods).toFixed(1)} floods (aim: at most ${aims[what]})`,
  );

const growing = [0.5, 0.35, 0.25, 0.18].map((edge) => {
  const cells = cut(placed[0], edge);
  const gate = gateOf(cells);
  return [cells.count, timeOf(3, () => forecastRoom(emptyRoom(cells, conditions), [gate]))] as const;
});
console.log(
  `time grows as cells to the ${growth(growing).toFixed(2)} (aim: at most ${aims.exponent}), from ${growing[0][0]} to ${growing[3][0]} cells`,
);

// The most this process has held, before and after one grid that is larger than all before it together.
const edge = 0.08;
const before = process.resourceUsage().maxRSS;
const big = cut(placed[0], edge);
forecastRoom(emptyRoom(big, conditions), [gateOf(big)]);
const bytes = ((process.resourceUsage().maxRSS - before) * 1024) / big.count;
console.log(`${bytes.toFixed(0)} bytes for each of ${big.count} cells (aim: at most ${aims.bytes})`);
