import { describe, expect, test } from 'vitest';
import { boundsOfOutline, type Point2 } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { lettersOf } from '../../../src/lettering/index.ts';
import { tipsOf } from '../../../src/mold/index.ts';
import { canParts } from '../../../src/parts/flat/can-parts.ts';
import { layoutPlate } from '../../../src/parts/flat/layout-plate.ts';
import { discBlank } from '../../../src/parts/halves/disc-blank.ts';
import { freeSpace } from '../../../src/parts/plate/free-space.ts';
import { letterPlate } from '../../../src/parts/plate/plate-lettering.ts';
import { layOutTitle, titlePlaceOnRing } from '../../../src/parts/plate/plate-title.ts';
import { reachesInto } from '../../../src/parts/printing/obstacles.ts';
import { splitToBed } from '../../../src/parts/printing/split-to-bed.ts';
import { box } from '../../export/shapes.ts';
import { masterOf, place } from '../example-masters.ts';
import { exampleMold } from '../example-mold.ts';

const square = (x: number, y: number, half: number): Point2[] => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
];
const plate = { id: 'plate', title: 'plate', words: ['hedge r7'], radius: 60 };

/** Whether two convex outlines share more than their edges: no side of either parts them (separating axes). */
const meet = (a: readonly Point2[], b: readonly Point2[]): boolean =>
  ![a, b].some((ring) =>
    ring.some(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length];
      const across = ([px, py]: Point2): number => (px - x) * (ny - y) - (py - y) * (nx - x);
      return (
        Math.min(...a.map(across)) >= Math.max(...b.map(across)) ||
        Math.min(...b.map(across)) >= Math.max(...a.map(across))
      );
    }),
  );

describe('texts on a plate', () => {
  const openings = [0, 1, 2, 3].map((k) => square(35 * Math.cos(k * 1.57), 35 * Math.sin(k * 1.57), 6));
  const wishes = openings.map((ring, k) => ({
    id: `leaf-${k}`,
    rings: [ring],
    texts: [[`leaf-${k}`, '3.5 DEEP'], [`leaf-${k}`]],
  }));

  test('keep off openings and each other, stay inside the rim, and all are there', () => {
    const { lettered, findings } = letterPlate(plate, wishes, () => freeSpace(60, openings, []));
    expect(findings).toEqual([]);
    expect(lettered).toHaveLength(5);
    for (const [i, text] of lettered.entries()) {
      for (const [x, y] of text) expect(Math.hypot(x, y)).toBeLessThan(60);
      for (const ring of [...openings, ...lettered.slice(0, i)]) expect(meet(text, ring)).toBe(false);
    }
  });

  test('what finds no room is named', () => {
    const filled = [...openings, square(0, 0, 28)];
    const { findings } = letterPlate({ ...plate, radius: 43 }, wishes, () => freeSpace(43, filled, []));
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['plate.no-name', 'note'],
      ['solid.label-left-off', 'note'],
    ]);
    expect(findings[0].values).toMatchObject({ measured: 2, ids: ['leaf-0', 'leaf-2'] });
  });
});

test('on a ring the words lie between its edges: the corners of the box by Pythagoras', () => {
  const [inner, outer] = [70, 84.5];
  const { lettered, findings } = layOutTitle(
    plate,
    ['LID SIDE', 'hedge r7'],
    titlePlaceOnRing(inner, outer, []),
  );
  expect(findings).toEqual([]);
  const far = lettered.flat().map(([x, y]) => Math.hypot(x, y));
  expect(Math.max(...far)).toBeLessThanOrEqual(outer + 1e-9);
  const [a, b] = lettered[0];
  // The side next to the middle of the ring is nearest at the foot of the perpendicular.
  const nearest = Math.abs(a[0] * b[1] - a[1] * b[0]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
  expect(nearest).toBeGreaterThanOrEqual(inner - 1e-9);
});

const kernel = await loadKernel();
const block = masterOf('block', box([20, 10, 5], [-10, -5, -3]));

test('a ring too narrow for letters says so, with the ring it is about', () => {
  const at = { file: 'plan.yaml', line: 1, column: 1 };
  const bench = { can: { diameter: 160, at } };
  const made = canParts.units(exampleMold({ process: 'rubber', bench })).map((unit) => unit.run({ kernel }));
  expect(made.flatMap(({ findings }) => findings.map(({ code, subject }) => [code, subject]))).toEqual([
    ['solid.label-left-off', 'centering-collar'],
    ['solid.label-left-off', 'thickness-stop'],
  ]);
});

test('the layout plate bears an index notch at angle 0, name and revision, and how each master lies', () => {
  const mold = exampleMold({
    process: 'rubber',
    masters: [block],
    placements: [place(block, 'a', { radius: 45, angleRad: Math.PI / 2, turnRad: 0.5 })],
  });
  const [{ drawings: [plan] = [], solids, findings }] = layoutPlate
    .units(mold)
    .map((unit) => unit.run({ kernel }));
  expect(findings).toEqual([]);
  const [edge] = plan.marks[0].outline;
  if (edge.kind !== 'track') throw new Error('the edge has no notch');
  expect(edge.corners.some(({ at: [x, y] }) => Math.abs(x - 72) < 1e-9 && Math.abs(y) < 1e-9)).toBe(true);
  expect(solids[0].lettered).toHaveLength(2);
  // As many strokes as the words have, at whatever height.
  const strokes = (words: string): number =>
    lettersOf({ words, at: [0, 0], height: 3, turnRad: 0, anchor: 'middle' }).length;
  const words = ['a', '3.0 DEEP', 'TURN 29', 'NOT TIPPED', 'HEDGEROW 1 R1'];
  const texts = solids[0].lettered ?? [];
  const within = plan.marks[1].outline.filter((path) => {
    const { min, max } = boundsOfOutline([path]);
    return texts.some((ring) => meet(ring, square((min[0] + max[0]) / 2, (min[1] + max[1]) / 2, 1e-3)));
  });
  expect(within.length).toBe(words.reduce((sum, text) => sum + strokes(text), 0));
});

test('a tip about x is read back from the matrix', () => {
  const [c, s] = [Math.cos(-Math.PI / 3), Math.sin(-Math.PI / 3)];
  const matrix = [2, 0, 0, 0, 0, 2 * c, 2 * s, 0, 0, -2 * s, 2 * c, 0, 5, 6, 7, 1] as const;
  const [tip, ...others] = tipsOf({ matrix, scale: 2 });
  expect(others).toEqual([]);
  expect(tip.axis).toBe('x');
  expect(tip.degrees).toBeCloseTo(-60, 9);
});

test('split lines and dovetails of a plate keep off its texts, and say so where they cannot', () => {
  const lettered = (count: number): Point2[][] =>
    Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * k) / count;
      return square(50 * Math.cos(angle), 50 * Math.sin(angle), 8);
    });
  const base = exampleMold();
  const mold = {
    ...base,
    fixture: { ...base.fixture, bed: { x: 120, y: 120, z: 100, joint: 0.2, margin: 3 } },
  };
  const disc = (texts: Point2[][]) =>
    kernel.scope((scope) => ({
      id: 'plate',
      title: 'plate',
      role: 'layout plate' as const,
      subjects: [],
      mesh: scope.toMesh(
        scope.revolve(
          [
            [0, 0],
            [75, 0],
            [75, 3],
            [0, 3],
          ],
          128,
          'plate',
        ),
      ),
      toMold: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1] as const,
      estimated: false,
      lettered: texts,
    }));
  const free = splitToBed([disc(lettered(5))], mold, kernel);
  expect(free.findings.map(({ code }) => code)).toEqual(['bed.split']);
  const crowded = splitToBed([disc(lettered(19))], mold, kernel);
  expect(crowded.findings.map(({ code }) => code)).toEqual(['bed.split', 'bed.cuts-text']);
});

test('the label of a half is where its outer face bears it, and a split keeps off it', () => {
  const base = exampleMold();
  const bed = { x: 140, y: 200, z: 100, joint: 0.2, margin: 3 };
  const mold = { ...base, fixture: { ...base.fixture, bed } };
  for (const solid of discBlank.units(mold).flatMap((unit) => unit.run({ kernel }).solids)) {
    const [text] = solid.lettered ?? [];
    // Engraving leaves corners over the bed in the label's box, at its depth of 0.6 mm; the index mark is at +x.
    const { positions: p } = solid.mesh;
    const engraved = Array.from({ length: p.length / 3 }, (_, i) => i * 3)
      .filter((i) => Math.abs(p[i + 2] - 0.6) < 1e-4 && p[i] < 60)
      .map((i): Point2 => [p[i], p[i + 1]]);
    const ends = (axis: 0 | 1) => {
      const [of, own] = [engraved, text].map((points) => points.map((point) => point[axis]));
      return [Math.min(...of) - Math.min(...own), Math.max(...of) - Math.max(...own)];
    };
    // A pen of 12 sides is up to 0.4 (1 - cos 15) narrower than its box.
    for (const off of [...ends(0), ...ends(1)]) expect(Math.abs(off)).toBeLessThan(0.02);
    const { solids: pieces, findings } = splitToBed([solid], mold, kernel);
    expect(pieces.length).toBe(2);
    expect(findings.map(({ code }) => code)).toEqual(['bed.split']);
  }
});

test('an outline reaches into a text where their sides cross or one lies in the other', () => {
  const text = { id: 'text', corners: square(0, 0, 5) };
  expect(reachesInto(text, square(0, 0, 2))).toBe(true);
  expect(
    reachesInto(text, [
      [-9, -1],
      [9, -1],
      [9, 1],
      [-9, 1],
    ]),
  ).toBe(true);
  expect(reachesInto(text, square(11, 0, 5))).toBe(false);
});
