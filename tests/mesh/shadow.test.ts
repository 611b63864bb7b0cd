import { describe, expect, it } from 'vitest';
import {
  columnsOf,
  heightMap,
  ringArea,
  silhouette,
  smallestCircle,
  widestHeight,
} from '../../src/mesh/index.ts';
import { ball, box, coneFrustum, revolved, shifted, together } from '../revolved-solids.ts';

describe('smallest circle', () => {
  // Circumcircle of an equilateral triangle of side a: a / sqrt 3. Of a box seen from above: half its diagonal.
  it('is the circumcircle of an equilateral triangle', () => {
    const points = [0, 0, 5, 6, 0, -5, 3, Math.sqrt(27), 0];
    const { x, y, radius } = smallestCircle(points);
    expect(x).toBeCloseTo(3, 12);
    expect(y).toBeCloseTo(Math.sqrt(3), 12);
    expect(radius).toBeCloseTo(6 / Math.sqrt(3), 12);
  });

  it('spans the long side of an obtuse triangle, and the diagonal of a box', () => {
    expect(smallestCircle([0, 0, 0, 10, 0, 0, 5, 1, 0])).toEqual({ x: 5, y: 0, radius: 5 });
    const { x, y, radius } = smallestCircle(box([1, 2, 0], [4, 6, 9]));
    expect([x, y, radius]).toEqual([2.5, 4, 2.5]);
  });

  it('holds every point and touches at least two, whatever the order', () => {
    // A spiral of fixed points; no random numbers.
    const points = Array.from({ length: 500 }, (_, i) => [
      Math.cos(i) * i * 0.1,
      Math.sin(i * 1.7) * i * 0.07,
      i,
    ]);
    const circle = smallestCircle(points.flat());
    const distances = points.map(([px, py]) => Math.hypot(px - circle.x, py - circle.y));
    expect(Math.max(...distances)).toBeLessThanOrEqual(circle.radius * (1 + 1e-9));
    expect(distances.filter((d) => d > circle.radius * (1 - 1e-9)).length).toBeGreaterThanOrEqual(2);
    const reversed = smallestCircle([...points].reverse().flat());
    expect(reversed.radius).toBeCloseTo(circle.radius, 10);
    expect(reversed.x).toBeCloseTo(circle.x, 8);
  });

  it('takes one point, and refuses none', () => {
    expect(smallestCircle([3, 4, 5])).toEqual({ x: 3, y: 4, radius: 0 });
    expect(() => smallestCircle([])).toThrow(RangeError);
  });
});

describe('height map', () => {
  it('gives a ball its heights: z = sqrt(R2 - x2 - y2), to the chord', () => {
    const map = heightMap(ball(5, [0, 0, 1], 96, 192), { cell: 0.25 });
    let met = 0;
    for (let j = 0; j < map.ny; j++) {
      for (let i = 0; i < map.nx; i++) {
        const square = (map.x0 + i * map.cell) ** 2 + (map.y0 + j * map.cell) ** 2;
        const k = j * map.nx + i;
        if (square > 25.001) expect(map.top[k]).toBeNaN();
        if (square > 22) continue;
        met++;
        expect(Math.abs(map.top[k] - (1 + Math.sqrt(25 - square)))).toBeLessThan(0.012);
        expect(Math.abs(map.bottom[k] - (1 - Math.sqrt(25 - square)))).toBeLessThan(0.012);
      }
    }
    expect(met).toBeGreaterThan(1000);
  });

  it('meets every node of a box once from below and once from above, also where nodes lie on its edges', () => {
    const block = box([0, 0, 0], [4, 3, 2]);
    for (const offset of [0, 0.5]) {
      const columns = columnsOf(block, { cell: 1, x0: offset - 1, y0: offset - 1, nx: 7, ny: 7 });
      let nodes = 0;
      for (let k = 0; k < 49; k++) {
        const found = [...columns.z.slice(columns.start[k], columns.start[k + 1])];
        if (found.length === 0) continue;
        nodes++;
        expect(found).toEqual([0, 2]);
        expect([...columns.up.slice(columns.start[k], columns.start[k + 1])]).toEqual([0, 1]);
      }
      // Half-open cells: a 4 x 3 box holds 12 nodes of a unit grid wherever the grid stands.
      expect(nodes).toBe(12);
    }
  });

  it('sorts the layers of stacked boxes', () => {
    const stack = together(box([0, 0, 6], [2, 2, 7]), box([0, 0, 0], [2, 2, 1]), box([0, 0, 3], [2, 2, 4]));
    const { z, up, start } = columnsOf(stack, { cell: 1 });
    expect([...start]).toEqual([0, 6, 12, 18, 24]);
    expect([...z.slice(0, 6)]).toEqual([0, 1, 3, 4, 6, 7]);
    expect([...up.slice(0, 6)]).toEqual([0, 1, 0, 1, 0, 1]);
  });

  it('adds up to the volume: closed solids balance in every column', () => {
    // Frustum, V = pi h / 3 (R2 + R r + r2).
    const map = heightMap(coneFrustum(30, 20, 10, 360), { cell: 0.2 });
    let volume = 0;
    for (let k = 0; k < map.top.length; k++)
      if (map.top[k] > map.bottom[k]) volume += map.top[k] - map.bottom[k];
    expect(Math.abs(volume * 0.04 - 19896.7535) / 19896.7535).toBeLessThan(2e-4);
  });
});

describe('silhouette', () => {
  it('of a ring has an outer outline and a hole: pi (R + r)2 and pi (R - r)2', () => {
    const circle = Array.from({ length: 64 }, (_, i): [number, number] => [
      20 + 5 * Math.cos((Math.PI * i) / 32),
      5 * Math.sin((Math.PI * i) / 32),
    ]);
    const rings = silhouette(revolved(circle, 360), 0.2);
    expect(rings).toHaveLength(2);
    const areas = rings.map(ringArea).sort((a, b) => a - b);
    expect(Math.abs(areas[0] + Math.PI * 225)).toBeLessThan(0.1);
    expect(Math.abs(areas[1] - Math.PI * 625)).toBeLessThan(0.2);
    for (const [x, y] of rings.flat()) {
      const radius = Math.hypot(x, y);
      // On the 360-sided silhouette itself: between apothem and circumradius, outside or inside.
      expect(Math.min(Math.abs(radius - 25), Math.abs(radius - 15))).toBeLessThan(0.0015);
    }
  });

  it('of two boxes one above the other is their union; of two apart, two outlines', () => {
    const crossed = silhouette(together(box([0, 0, 0], [4, 2, 1]), box([1, -1, 5], [2, 3, 6])), 0.1);
    expect(crossed).toHaveLength(1);
    expect(ringArea(crossed[0])).toBeCloseTo(4 * 2 + 4 - 2, 1);
    const apart = silhouette(together(box([0, 0, 0], [1, 1, 1]), box([3, 0, 0], [4, 1, 1])), 0.1);
    expect(apart).toHaveLength(2);
    for (const ring of apart) expect(ringArea(ring)).toBeCloseTo(1, 1);
  });

  it('is the same wherever the mesh lies', () => {
    const area = (x: number): number =>
      silhouette(shifted(ball(3, [0, 0, 0]), [x, -x, 0]), 0.1).reduce((sum, ring) => sum + ringArea(ring), 0);
    expect(area(0.033)).toBeCloseTo(area(0), 2);
  });

  it('of nothing is nothing', () => {
    expect(silhouette({ positions: new Float32Array(), triangles: new Uint32Array() }, 0.1)).toEqual([]);
  });
});

describe('widest height', () => {
  it('is the equator of a ball', () => {
    expect(widestHeight(ball(5, [20, 3, 1.25]))).toBeCloseTo(1.25, 2);
  });

  it('is the back of a flat-backed piece, exactly', () => {
    expect(widestHeight(shifted(coneFrustum(10, 8, 3, 60), [0, 0, 0.5]))).toBeCloseTo(0.5, 6);
    expect(widestHeight(coneFrustum(8, 10, 3, 60))).toBeCloseTo(3, 6);
  });

  it('is the middle of a straight wall', () => {
    expect(widestHeight(box([0, 0, 1], [5, 5, 4]))).toBeCloseTo(2.5, 6);
  });

  it('is the belly of a turned piece: widest at z = 2', () => {
    const belly = revolved(
      [
        [0, 0],
        [3, 0],
        [8, 2],
        [4, 6],
        [0, 6],
      ],
      72,
    );
    expect(widestHeight(belly)).toBeCloseTo(2, 1);
  });
});
