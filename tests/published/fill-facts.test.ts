import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { middleOf, volumeOf } from '../../src/fill/cells.ts';
import { emptyRoom } from '../../src/fill/empty-room.ts';
import { airLeft, fillRoom } from '../../src/fill/forecast.ts';
import { gateForecast } from '../../src/fill/gate.ts';
import { moveMesh, translation } from '../../src/geometry/index.ts';
import { readMesh } from '../../src/mesh/index.ts';
import { type Box, cut, portIn, roomOf, turning } from '../fill/shapes.ts';
import { usual } from '../fill/shut-in.ts';

/** Common practice, no published source: tips, tails and corners of bases are vented, and narrow gates opened first. */
describe('what a caster knows, out of the forecast', () => {
  /** A body with a tip outward, so wide square, and a base with corners. */
  const tipped = (width: number): Box[] => [
    [
      [60, -4, -4],
      [70, 4, 4],
    ],
    [
      [69, -width / 2, -width / 2],
      [80, width / 2, width / 2],
    ],
  ];
  const gates: Record<string, Box> = {
    inner: [
      [59, -1.5, -9],
      [60.6, 1.5, 9],
    ],
    side: [
      [59, 3.5, -1],
      [61.5, 9, 1],
    ],
  };
  /** Holds nothing off. */
  const free = { bond: 1e-6, angle: 145 };

  it('outer tips and corners are safe for a liquid at rest: what is narrow alone explains a vent there', () => {
    const rows = [1.8, 5].map((width) => {
      const cells = cut(roomOf(tipped(width)), 0.3);
      return Object.values(gates).map((box) => {
        const room = fillRoom(emptyRoom(cells, turning), [portIn(cells, 'gate', box)]);
        const outward = (lock: typeof free): number =>
          airLeft(room, lock)
            .filter(({ place }) => place[0] > 66)
            .reduce((sum, one) => sum + one.shutIn, 0);
        const [still, locked] = [outward(free), outward(usual)];
        console.log(
          `tip ${width} mm square: ${still.toFixed(1)} mm3 stay by level, ${locked.toFixed(1)} as it is narrow`,
        );
        return [still, locked / (10 * width ** 2)];
      });
    });
    expect(rows.flat().map(([still]) => still)).toEqual(rows.flat().map(() => 0));
    // Bond number of the half width at 70 mm: 1.5 and 11.6, against 4.6 on the edge of a mouth.
    const [thin, wide] = rows.map((row) => row.map(([, locked]) => locked));
    expect(Math.min(...thin)).toBeGreaterThan(0.9);
    expect(wide).toEqual([0, 0]);
  });

  it('opening a gate of 2 mm frees more than the best vent in the compact masters of the demo, a vent more in those with arms', () => {
    const names = ['beetle', 'ivy-leaf', 'fern-frond', 'snail-shell', 'oak-button', 'seed-head'];
    const rows = names.map((name) => {
      const file = `${name}.stl`;
      const read = readMesh(
        readFileSync(new URL(`../../presets/hedgerow/masters/${file}`, import.meta.url)),
        file,
      );
      if (!('mesh' in read)) throw new Error(`${file} cannot be read`);
      const mesh = { ...read.mesh, positions: Float32Array.from(read.mesh.positions) };
      const cells = cut(moveMesh(mesh, translation(75, 0, 0)), 0.5);
      const all = Array.from({ length: cells.count }, (_, c) => c);
      const inner = Math.min(...all.map((c) => middleOf(cells, c)[0]));
      const gate = {
        id: 'gate',
        kind: 'gate' as const,
        cells: all.filter((c) => middleOf(cells, c)[0] < inner + 1),
        width: 2,
        depth: 1,
      };
      const air = airLeft(fillRoom(emptyRoom(cells, turning), [gate]), usual);
      const vent = Math.max(0, ...air.map(({ volume }) => volume));
      const [least, most] = gateForecast(cells, gate, turning, usual, volumeOf(cells, all)).band;
      console.log(
        `${name}: ${least.toFixed(1)} to ${most.toFixed(1)} mm3 under a gate of 2 mm, ${vent.toFixed(1)} at the best vent`,
      );
      return { name, gateFirst: most > vent };
    });
    const gateFirst = rows.filter((row) => row.gateFirst).map(({ name }) => name);
    expect(gateFirst).toEqual(['snail-shell', 'oak-button', 'seed-head']);
  });
});
