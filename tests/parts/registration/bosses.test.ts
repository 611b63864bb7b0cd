import { beforeAll, describe, expect, it } from 'vitest';
import { boundsOf, moveMesh, pointsOf } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import type { Boss, Mold, Tools } from '../../../src/mold/index.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { type LabelRoom, labelCutter, layLabel } from '../../../src/parts/making/label.ts';
import { bossCups } from '../../../src/parts/registration/boss-cups.ts';
import { bosses, faceRoom, hexagonRoom } from '../../../src/parts/registration/bosses.ts';
import { pocketOf } from '../../../src/parts/registration/registration-jig.ts';
import { hexNut } from '../../../src/tables/index.ts';
import { exampleBoss, exampleMold, frustum, shareAt, solidsOf, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const lean = (10 * Math.PI) / 180;
const hexagon = (changes: Partial<Boss> = {}): Boss =>
  exampleBoss({
    kind: 'hexagon',
    size: 'M8',
    acrossFlats: 13,
    rootDepth: 6.8,
    headRadius: 6.5,
    headHeight: 6.5,
    headDraftRad: lean,
    ...changes,
  });
const cone = exampleBoss({ id: 'b', x: 0, y: 60 });
const rubber = (all: readonly Boss[], changes: Partial<Mold> = {}): Mold =>
  exampleMold({ process: 'rubber', bosses: all, ...changes });

/** A = (sqrt 3 / 2) s2. */
const hexArea = (s: number): number => (Math.sqrt(3) / 2) * s * s;
/** A frustum between two hexagons: V = h / 3 (A + B + sqrt(A B)). */
const hexFrustum = (s: number, t: number, h: number): number =>
  (h / 3) * (hexArea(s) + hexArea(t) + Math.sqrt(hexArea(s) * hexArea(t)));

/** What the words on it take away, 0.6 mm deep. */
const engraved = (words: string, room: LabelRoom): number =>
  tools.kernel.scope((scope) => {
    const label = labelCutter(scope, [words], room);
    return label ? scope.slice(label, -0.3).area() * 0.6 : 0;
  });

describe('a loose hexagon', () => {
  it('is a prism and a drafted frustum on it, less its label', () => {
    const [solid] = solidsOf(bosses, rubber([hexagon()]), tools);
    const top = 13 - 2 * 6.5 * Math.tan(lean);
    const whole = hexArea(13) * 6.8 + hexFrustum(13, top, 6.5);
    const label = engraved('M8', hexagonRoom(6.5));
    expect(label).toBeGreaterThan(3);
    expect((volumeOf(solid.mesh) + label) / whole).toBeCloseTo(1, 5);
    expect(pairEdges(solid.mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    expect(solid.id).toBe('boss-hexagon-m8');
    // 13 across flats in y, 2 s / sqrt 3 across corners in x.
    const { min, max } = boundsOf(solid.mesh.positions);
    expect(max[1] - min[1]).toBeCloseTo(13, 4);
    expect(max[0] - min[0]).toBeCloseTo((2 * 13) / Math.sqrt(3), 4);
  });

  it('leaves the same shape in both halves of rubber, and a rigid lower half carries its head', () => {
    const volumes = (mold: Mold): number[] => solidsOf(halves, mold, tools).map(({ mesh }) => volumeOf(mesh));
    const { sprue: _, ...bare } = rubber([]);
    const top = 13 - 2 * 6.5 * Math.tan(lean);
    const [lower, upper] = volumes(bare);
    const [withRoot, withHead] = volumes({ ...bare, bosses: [hexagon({ turnRad: 0.3 })] });
    expect((lower - withRoot) / (hexArea(13) * 6.8)).toBeCloseTo(1, 4);
    expect((upper - withHead) / hexFrustum(13, top, 6.5)).toBeCloseTo(1, 4);
    const rigid = { ...bare, process: 'rigid' } as const;
    const [below, above] = volumes(rigid);
    const fitted = hexagon({ clearance: 0.25 });
    const [stud, socket] = volumes({ ...rigid, bosses: [fitted] });
    expect((stud - below) / hexFrustum(13, top, 6.5)).toBeCloseTo(1, 4);
    // Clearance square to flats and top; the mouth is 0.6 mm wider by a 45 degree chamfer at most.
    const wide = 13 + (2 * 0.25) / Math.cos(lean);
    const wideTop = wide - 2 * 6.75 * Math.tan(lean);
    const plain = hexFrustum(wide, wideTop, 6.75);
    expect(above - socket).toBeGreaterThan(plain);
    expect(above - socket).toBeLessThan(plain + 3 * wide * (2 / Math.sqrt(3)) * 0.6 * 0.6 * 0.5 * 1.1 * 2);
  });

  it.each(['M6', 'M8', 'M10', 'M12', 'M16'])('has room for %s under its root, inside its edges', (size) => {
    const across = hexNut(size)?.acrossFlats ?? 0;
    const { strokes } = layLabel([size], hexagonRoom(across / 2));
    expect(strokes.length > 0).toBe(size !== 'M6');
    // Flats as half-planes: |y| and both diagonals at most half the width, less half a stroke.
    for (const [x, y] of strokes.flat()) {
      for (const turn of [30, 90, 150]) {
        const angle = (turn * Math.PI) / 180;
        const off = Math.abs(x * Math.cos(angle) + y * Math.sin(angle));
        expect(off).toBeLessThan(across / 2 - 0.5 - 0.3);
      }
    }
  });

  it('goes through the jig as a hexagon', () => {
    const { fixture } = exampleMold();
    const path = pocketOf({ fixture }, hexagon());
    const reach = Math.max(...pointsOf(path).map(([x, y]) => Math.hypot(x - 60, y)));
    expect(reach * Math.sqrt(3)).toBeCloseTo(13.4, 9);
  });
});

describe('a socket cup', () => {
  it('is a chamfered cylinder less the cone with its clearance and lead-in, and its label', () => {
    const [solid] = solidsOf(bossCups, rubber([cone]), tools);
    expect(solid).toMatchObject({ id: 'cup-cone-10', role: 'boss cup', subjects: ['b'] });
    // 0.2 mm square to a cone of 5 by 6: wider by 0.2 / cos of its lean, higher by 0.2 / sin.
    const slant = Math.hypot(5, 6);
    const [r, h] = [5 + (0.2 * slant) / 6, 6 + (0.2 * slant) / 5];
    // The cone leans 40 degrees, the lead-in 45: from r + 0.6 in to where both meet.
    const meet = (0.6 * h) / (h - r);
    const socket =
      (Math.PI * (r - (meet * r) / h) ** 2 * (h - meet)) / 3 + frustum(r + 0.6, r + 0.6 - meet, meet);
    const [outer, height] = [r + 0.6 + 1.5, h + 1.5 + 0.6];
    const cylinder = Math.PI * outer ** 2 * (height - 0.6) + frustum(outer, outer - 0.6, 0.6);
    const expected = cylinder - socket - engraved('10', faceRoom(outer - 0.6));
    // Drawn by polygons round the circles, which have up to 0.2 % more.
    expect(volumeOf(solid.mesh) / expected).toBeGreaterThan(0.998);
    expect(volumeOf(solid.mesh) / expected).toBeLessThan(1 / shareAt(5) + 0.002);
    expect(pairEdges(solid.mesh)).toMatchObject({ unpaired: 0, flat: 0 });
  });

  /** Outside of a cup round a socket whose mouth, lead-in and all, has this reach, and whose tip is this high. */
  const outside = (mouth: number, tip: number) => {
    const [outer, height] = [mouth + 1.5, tip + 1.5 + 0.6];
    const volume = Math.PI * outer ** 2 * (height - 0.6) + frustum(outer, outer - 0.6, 0.6);
    return { outer, volume };
  };

  it('of a hexagon has a hexagonal socket: two frusta, A = (sqrt 3 / 2) s2', () => {
    const [solid] = solidsOf(bossCups, rubber([hexagon()]), tools);
    const tan = Math.tan(lean);
    const [foot, tip] = [6.5 + 0.2 / Math.cos(lean), 6.7];
    // The lead-in of 45 degrees from 0.6 mm outside the flats meets them where z = 0.6 / (1 - tan).
    const meet = 0.6 / (1 - tan);
    const socket =
      hexFrustum(2 * (foot + 0.6), 2 * (foot - meet * tan), meet) +
      hexFrustum(2 * (foot - meet * tan), 2 * (foot - tip * tan), tip - meet);
    const { outer, volume } = outside(((foot + 0.6) * 2) / Math.sqrt(3), tip);
    const expected = volume - socket - engraved('M8', faceRoom(outer - 0.6));
    // The outside alone is round, drawn by a polygon round the circle.
    expect(volumeOf(solid.mesh) / expected).toBeGreaterThan(1);
    expect(volumeOf(solid.mesh) / expected).toBeLessThan(1.004);
  });

  it('of a dome on a collar: cylinder, half ball and the ring of the lead-in', () => {
    const dome = { ...cone, kind: 'dome', headHeight: 7 } as const;
    const [solid] = solidsOf(bossCups, rubber([dome]), tools);
    const r = 5.2;
    // The collar is 2 mm high, the lead-in 0.6 by 0.6 mm.
    const socket = Math.PI * r ** 2 * 1.4 + frustum(r + 0.6, r, 0.6) + (2 / 3) * Math.PI * r ** 3;
    const { outer, volume } = outside(r + 0.6, 7.2);
    const expected = volume - socket - engraved('10', faceRoom(outer - 0.6));
    expect(volumeOf(solid.mesh) / expected).toBeGreaterThan(0.996);
    expect(volumeOf(solid.mesh) / expected).toBeLessThan(1.004);
  });

  it('takes its boss: nothing of the boss is in the cup, and it stands on its closed end', () => {
    for (const one of [hexagon(), cone, { ...cone, kind: 'dome', headHeight: 7, id: 'c' } as const]) {
      const mold = rubber([{ ...one, x: 0, y: 0, socketDraftRad: 0.02 }]);
      const [cup] = solidsOf(bossCups, mold, tools);
      const [pin] = solidsOf(bosses, mold, tools);
      tools.kernel.scope((scope) => {
        const placed = [cup, pin].map(({ mesh, toMold, id }) => scope.fromMesh(moveMesh(mesh, toMold), id));
        expect(scope.intersect(placed, 'both').volume()).toBe(0);
      });
      expect(boundsOf(cup.mesh.positions).min[2]).toBe(0);
      // Its mouth is on the parting plane.
      expect(boundsOf(moveMesh(cup.mesh, cup.toMold).positions).min[2]).toBeCloseTo(0, 6);
    }
  });

  it('is said to be no sleeve where it leaves less cover than is wanted: thickness less its height', () => {
    const found = (upper: number) => {
      const mold = rubber([cone]);
      const [{ findings }] = bossCups
        .units({ ...mold, disc: { ...mold.disc, upper } })
        .map((unit) => unit.run(tools));
      return findings.filter(({ code }) => code === 'cup.no-sleeve');
    };
    // Cone 6 mm high, 0.2 mm square to its slant, 1.5 mm wall and 0.6 mm for the label; the limit is 3 mm.
    const height = 6 + (0.2 * Math.hypot(5, 6)) / 5 + 1.5 + 0.6;
    expect(found(height + 3.01)).toEqual([]);
    expect(found(height + 2)[0].values.measured).toBeCloseTo(2, 9);
    expect(found(height - 1)[0].values.which).toBe('high');
  });

  it('has no cup for cap nuts, nor in rigid and poured halves, whose bosses are no loose bodies', () => {
    const nut = { ...cone, kind: 'cap nut', acrossFlats: 13, size: 'M8' } as const;
    expect(solidsOf(bossCups, rubber([nut]), tools)).toEqual([]);
    for (const process of ['rigid', 'poured'] as const)
      expect(solidsOf(bossCups, exampleMold({ process, bosses: [cone] }), tools)).toEqual([]);
  });
});
