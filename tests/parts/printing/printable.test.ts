import { describe, expect, test } from 'vitest';
import { translation } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { thinnestWall } from '../../../src/mesh/index.ts';
import { discBlank } from '../../../src/parts/halves/disc-blank.ts';
import { overhang } from '../../../src/parts/printing/overhang.ts';
import { judgePrintable } from '../../../src/parts/printing/printable.ts';
import { makingProcesses } from '../../../src/tables/index.ts';
import { box, meshOf, solidOf, torus } from '../../export/shapes.ts';
import { exampleMold, solidsOf } from '../example-mold.ts';

const degrees = (value: number): number => (value * Math.PI) / 180;

describe('overhang', () => {
  // A torus standing on its lowest circle: the share of its surface past a lean, by Pappus' theorem.
  test('of a ring, against its surface by Pappus', () => {
    const [radius, tube] = [20, 5];
    const { positions, triangles } = torus(radius, tube, 512, 256);
    const standing = { positions: positions.map((v, i) => (i % 3 === 2 ? v + tube + 1 : v)), triangles };
    // Lean past 45 degrees: the quarter of the tube's circle that looks down, turned about the axis; the arc from
    // 225 to 315 degrees has its middle under the tube's, so its outer and inner sides even out.
    const arc = tube * (Math.PI / 2);
    const { area, steepestRad } = overhang(standing, degrees(45));
    expect(area / (arc * 2 * Math.PI * radius)).toBeGreaterThan(0.98);
    expect(area / (arc * 2 * Math.PI * radius)).toBeLessThan(1.02);
    expect(steepestRad).toBeCloseTo(Math.PI / 2, 1);
  });

  /** A funnel of `n` sides, 5 mm at its foot, 15 mm at its rim, 5 mm high: it leans out by atan(10 / 5). */
  const funnel = (n: number) => {
    const ring = (r: number, z: number) =>
      Array.from({ length: n }, (_, i) => {
        const angle = (2 * Math.PI * i) / n;
        return [r * Math.cos(angle), r * Math.sin(angle), z] as const;
      });
    const faces = Array.from({ length: n }, (_, i) => {
      const next = (i + 1) % n;
      return [
        [i, next, n + next],
        [i, n + next, n + i],
        [2 * n, next, i],
        [2 * n + 1, n + i, n + next],
      ] as const;
    });
    return meshOf([...ring(5, 0), ...ring(15, 5), [0, 0, 0], [0, 0, 5]], faces.flat());
  };

  test('of a funnel is its wall, pi (R + r) s, from a lean of 63.4 degrees on; none under it', () => {
    const wall = Math.PI * (15 + 5) * Math.hypot(10, 5);
    const { area, steepestRad, place = [0, 0, 0] } = overhang(funnel(720), degrees(63));
    expect(area / wall).toBeCloseTo(1, 4);
    expect(steepestRad).toBeCloseTo(Math.atan2(10, 5), 4);
    // On the wall, which rises 1 mm in 2.
    expect(place[2]).toBeCloseTo((Math.hypot(place[0], place[1]) - 5) / 2, 3);
    expect(overhang(funnel(720), degrees(64)).area).toBe(0);
  });

  test('its place is told where the solid stands in the mold', () => {
    const solid = solidOf('plug', funnel(64), { title: 'plug', toMold: translation(100, 20, -40) });
    const mold = exampleMold();
    const making = { process: 'FDM', overhangRad: degrees(45), leastFeature: 0 } as const;
    const [found] = judgePrintable([solid], { ...mold, fixture: { ...mold.fixture, making } });
    expect(found.code).toBe('making.overhang');
    const [x, y, z] = found.place ?? [0, 0, 0];
    expect(z + 40).toBeCloseTo((Math.hypot(x - 100, y - 20) - 5) / 2, 1);
    expect(z).toBeGreaterThan(-40);
  });

  test('a groove in the face on the bed is bridged up to 2 mm of width, a wider one hangs; so does a thin ledge', async () => {
    const kernel = await loadKernel();
    const grooved = (width: number) =>
      kernel.scope((scope) => {
        const block = scope.fromMesh(box([40, 20, 5]), 'block');
        const groove = scope.fromMesh(box([30, width, 2], [5, 4, -1]), 'groove');
        return scope.toMesh(scope.subtract(block, [groove], 'grooved block'));
      });
    // 30 x w over an outline of 2 (30 + w): 1.9 is bridged, 4 mm are not.
    expect(overhang(grooved(1.9), degrees(45))).toEqual({ area: 0, steepestRad: 0 });
    expect(overhang(grooved(4), degrees(45)).area).toBeCloseTo(30 * 4, 4);
    const ledge = kernel.scope((scope) => {
      const [foot, top] = [box([20, 20, 5]), box([21, 20, 2], [0, 0, 4])].map((one) =>
        scope.fromMesh(one, 'box'),
      );
      return scope.toMesh(scope.unite([foot, top], 'ledge'));
    });
    expect(overhang(ledge, degrees(45)).area).toBeCloseTo(20, 4);
  });

  test('what stands on the bed is held by it; the same box lifted hangs', () => {
    expect(overhang(box([10, 20, 5]), degrees(45)).area).toBe(0);
    const { area, place } = overhang(box([10, 20, 5], [0, 0, 3]), degrees(45));
    expect(area).toBeCloseTo(200, 9);
    expect(place?.[2]).toBe(3);
  });
});

describe('thinnest wall', () => {
  test('of a plate is its thickness, wherever it stands and however it is turned', () => {
    expect(thinnestWall(box([30, 20, 0.7], [5, 6, 7]), 100)?.thickness).toBeCloseTo(0.7, 5);
    expect(thinnestWall(box([0.3, 20, 9]), 100)?.thickness).toBeCloseTo(0.3, 5);
  });

  test('of a ring is its tube, to within the chord', () => {
    const { thickness } = thinnestWall(torus(20, 2, 128, 64), 20000) ?? { thickness: 0 };
    expect(thickness).toBeLessThan(4);
    expect(thickness).toBeGreaterThan(4 * Math.cos(Math.PI / 64) * 0.995);
  });

  test('faces that meet in an edge are no wall', () => {
    const wedge = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 10, 0],
        [0, 0, 10],
      ],
      [
        [0, 2, 1],
        [0, 1, 3],
        [0, 3, 2],
        [1, 2, 3],
      ],
    );
    expect(thinnestWall(wedge, 100)).toBe(undefined);
  });

  test('is not looked for from faces that are left out', () => {
    const thin = box([0.3, 20, 9]);
    expect(thinnestWall(thin, 100, ([, , z]) => z > 9)?.thickness).toBeCloseTo(0.3, 5);
    // The middles of the faces of a box's sides are at a third and two thirds of its height.
    expect(thinnestWall(thin, 100, ([, , z]) => z > 2)?.thickness).toBeCloseTo(9, 5);
  });
});

describe('findings', () => {
  const thin = solidOf('tab', box([30, 20, 0.5]), { title: 'tab' });
  const shelf = solidOf('plug', box([30, 20, 5], [0, 0, 4]), { title: 'plug' });
  const judge = (given?: { overhangRad?: number; leastFeature: number }) => {
    const mold = exampleMold();
    const making = given && ({ process: 'FDM', ...given } as const);
    return judgePrintable([thin, shelf], {
      ...mold,
      fixture: { ...mold.fixture, ...(making && { making }) },
    });
  };

  test('one for a thin wall, one for an overhang, with place and limit', () => {
    expect(judge({ overhangRad: degrees(45), leastFeature: 0.8 })).toMatchObject([
      {
        code: 'making.thin',
        subject: 'tab',
        values: { measured: expect.closeTo(0.5, 3), limit: 0.8 },
      },
      { code: 'making.overhang', subject: 'plug', values: { measured: expect.closeTo(600, 6) } },
    ]);
  });

  test('none of the ridges between the letters a solid is engraved with', async () => {
    const mold = exampleMold();
    const named = { ...mold, disc: { ...mold.disc, label: 'HEDGEROW' } };
    const blanks = solidsOf(discBlank, named, { kernel: await loadKernel() });
    const fixture = { ...mold.fixture, making: { process: 'machined', leastFeature: 0.8 } as const };
    expect(judgePrintable(blanks, { ...named, fixture })).toEqual([]);
  });

  test('none within the limits, none of overhang where nothing is built in layers', () => {
    expect(judge({ leastFeature: 0.4 })).toEqual([]);
  });

  test('one note for all where the plan names no process', () => {
    expect(judge()).toMatchObject([{ code: 'making.not-checked', severity: 'note', subject: 'fixture' }]);
  });
});

test('table of processes: printed sliding fits as the sources give them', () => {
  const clearance = Object.fromEntries(makingProcesses.map((row) => [row.name, row.clearance.value]));
  // A supplier’s table of printed fits: 0.2 to 0.3 mm a side; a print service’s guide: 0.25 mm between two resin parts.
  expect(clearance.FDM).toBeGreaterThanOrEqual(0.2);
  expect(clearance.FDM).toBeLessThanOrEqual(0.3);
  expect(clearance.SLA * 2).toBe(0.25);
});
