import { beforeAll, describe, expect, it, test } from 'vitest';
import { moveMesh, segmentsFor } from '../../../src/geometry/index.ts';
import { KernelFault, loadKernel } from '../../../src/kernel/index.ts';
import {
  resolveLayout,
  type Sprue,
  shaftRadius,
  type Tools,
  wellFloorRadius,
} from '../../../src/mold/index.ts';
import { labelCutter, layLabel } from '../../../src/parts/making/label.ts';
import { plug } from '../../../src/parts/sprue/plug.ts';
import { gripRoom } from '../../../src/parts/sprue/sprue-cuts.ts';
import { sprueForm } from '../../../src/parts/sprue/sprue-form.ts';
import { readPlan } from '../../../src/plan/index.ts';
import {
  cap,
  exampleMold,
  exampleSprue,
  frustum,
  polygonShare,
  solidsOf,
  volumeOf,
} from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const upper = exampleMold().disc.upper;

/** Frusta of shaft and well and the grip's cylinder, less the dish's cap (solid geometry, any handbook). */
function roundVolume(sprue: typeof exampleSprue): number {
  const top = shaftRadius(sprue, upper);
  return (
    frustum(sprue.holeRadius, top, upper) +
    Math.PI * top ** 2 * sprue.grip +
    frustum(sprue.wellRadius, wellFloorRadius(sprue), sprue.wellDepth) -
    cap(sprue.domeRadius, sprue.domeHeight)
  );
}

test('a sprue form without fillet and dome is two frusta and a cylinder, to 1e-6 of the polygonal solid', () => {
  const sprue = { ...exampleSprue, fillet: 0, domeHeight: 0 };
  const [form] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const share = polygonShare(segmentsFor(sprue.wellRadius, 0.01));
  expect(volumeOf(form.mesh) / (roundVolume({ ...sprue, domeRadius: 0 }) * share)).toBeCloseTo(1, 6);
});

test('with its dish it keeps to the round volume within the chord bound', () => {
  const sprue = { ...exampleSprue, fillet: 0 };
  const [form] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const round = roundVolume(sprue);
  // A chord stays within 0.01 mm of its circle: at most that times the surface, here under 0.2 %.
  expect(Math.abs(volumeOf(form.mesh) - round)).toBeLessThan(0.002 * round);
});

test.each([0, 1.5])('a sprue form with fillet %s is one closed ball standing on the bed', (fillet) => {
  const [form] = solidsOf(sprueForm, exampleMold({ sprue: { ...exampleSprue, fillet } }), tools);
  expect(pairEdges(form.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(Math.min(...form.mesh.positions.filter((_, i) => i % 3 === 2))).toBe(0);
  expect(form.toMold[14]).toBe(-exampleSprue.wellDepth);
});

test('fillets at mouth and floor: one adds what the closed form of a corner says, the other takes it away', () => {
  const sprue = { ...exampleSprue, draftRad: 0, domeHeight: 0 };
  const [sharp] = solidsOf(sprueForm, exampleMold({ sprue: { ...sprue, fillet: 0 } }), tools);
  const [round] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const r = sprue.fillet;
  // Pappus: area of the corner outside a quarter circle (1 - pi/4) r^2, its centroid 0.2234 r from the edges
  // ((10 - 3 pi) / (12 - 3 pi)); at the mouth it is added outside the shaft, at the floor taken inside the wall.
  const area = (1 - Math.PI / 4) * r * r;
  const inset = ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) * r;
  const expected =
    2 * Math.PI * area * (sprue.holeRadius + inset) - 2 * Math.PI * area * (sprue.wellRadius - inset);
  expect(volumeOf(round.mesh) - volumeOf(sharp.mesh)).toBeCloseTo(expected, 0);
  expect(Math.abs(volumeOf(round.mesh) - volumeOf(sharp.mesh) - expected)).toBeLessThan(
    0.05 * Math.abs(expected),
  );
});

/** Area of the polygon of n sides round a circle: n r^2 tan(pi / n). */
const roundArea = (radius: number): number => {
  const n = segmentsFor(radius, 0.01);
  return n * radius ** 2 * Math.tan(Math.PI / n);
};

test('the plug is the shaft less its clearance and the puller hole', () => {
  const puller = { screw: 'M6', diameter: 5, depth: 12 };
  const [body] = solidsOf(plug, exampleMold({ sprue: { ...exampleSprue, puller } }), tools);
  const c = 0.2;
  const top = shaftRadius(exampleSprue, upper) - c;
  const round = frustum(exampleSprue.holeRadius - c, top, upper) + Math.PI * top ** 2 * exampleSprue.grip;
  const share = polygonShare(segmentsFor(exampleSprue.holeRadius, 0.01));
  // Its name goes round the hole, 0.6 mm deep.
  const room = gripRoom({
    sprue: { ...exampleSprue, puller },
    upper,
    smaller: c,
    foot: 0,
    chordError: 0.01,
    holes: 0,
  });
  const label = tools.kernel.scope((scope) => {
    const cutter = labelCutter(scope, ['plug', 'r1'], room);
    return cutter ? scope.slice(cutter, -0.3).area() * 0.6 : 0;
  });
  expect(label).toBeGreaterThan(5);
  expect((volumeOf(body.mesh) + label) / (round * share - 12 * roundArea(2.5))).toBeCloseTo(1, 6);
  expect(pairEdges(body.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  // Without a puller hole its name is engraved there.
  const [named] = solidsOf(plug, exampleMold(), tools);
  expect(volumeOf(named.mesh)).toBeLessThan(round * share - 5);
  expect(pairEdges(named.mesh)).toMatchObject({ unpaired: 0, flat: 0 });
});

/** Area between a circle and a chord `deep` below its rim (handbook: R^2 acos((R - h) / R) - (R - h) sqrt(2 R h - h^2)). */
const segmentArea = (radius: number, deep: number): number =>
  radius ** 2 * Math.acos((radius - deep) / radius) -
  (radius - deep) * Math.sqrt(2 * radius * deep - deep ** 2);

test('flats, vent flat and puller hole take away what closed forms say, to 0.1 % of the form', () => {
  const bare = { ...exampleSprue, fillet: 0 };
  const top = shaftRadius(bare, upper);
  const puller = { screw: '1/4-20', diameter: 5.08, depth: 12.7 };
  const sprue = { ...bare, puller, flats: 18, vent: 0.5 };
  const [form] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  // The vent flat is 0.5 deep at every height from 1 mm up: Simpson's rule along the shaft, then straight up the grip.
  const steps = 200;
  let shaftVent = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 ? 4 : 2;
    shaftVent += weight * segmentArea(shaftRadius(bare, 1 + ((upper - 1) * i) / steps), 0.5);
  }
  shaftVent *= (upper - 1) / steps / 3;
  const cut =
    shaftVent +
    bare.grip * (segmentArea(top, 0.5) + 2 * segmentArea(top, top - 9)) +
    puller.depth * roundArea(puller.diameter / 2);
  const expected = roundVolume(bare) - cut;
  // The whole is drawn with chords; against the round closed form 0.1 % besides the polygons' own share.
  const share = polygonShare(segmentsFor(bare.wellRadius, 0.01));
  expect(Math.abs(volumeOf(form.mesh) / (expected * share) - 1)).toBeLessThan(0.001);
  expect(pairEdges(form.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test('in two pieces: well with spigot, shaft with its hole; together the whole form and the clearance', () => {
  const sprue = { ...exampleSprue, fillet: 0, puller: { screw: 'M6', diameter: 5, depth: 8 } };
  const [whole] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const pieces = solidsOf(sprueForm, exampleMold({ sprue: { ...sprue, pieces: 'two' } }), tools);
  expect(pieces.map(({ id }) => id)).toEqual(['sprue-form-well', 'sprue-form-shaft']);
  for (const { mesh } of pieces) expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  // As high as its radius, being less than half the upper half.
  const [r, h, c] = [sprue.holeRadius / 2, sprue.holeRadius / 2, 0.2];
  // The spigot's gap: the larger cylinder less the smaller, and the 0.5 mm chamfer at its tip.
  const chamfered = Math.PI * r ** 2 * (h - 0.5) + frustum(r, r - 0.5, 0.5);
  const gap = Math.PI * (r + c) ** 2 * (h + c) - chamfered;
  const share = polygonShare(segmentsFor(sprue.wellRadius, 0.01));
  const together = volumeOf(pieces[0].mesh) + volumeOf(pieces[1].mesh);
  expect((volumeOf(whole.mesh) - together) / (gap * share)).toBeCloseTo(1, 5);
});

test("the process's own shrink makes form and plug larger, and their matrix brings them back to size", () => {
  const mold = exampleMold();
  const shrunk = { ...mold, fixture: { ...mold.fixture, compensation: 0.005 } };
  for (const part of [sprueForm, plug]) {
    const [[plain], [larger]] = [mold, shrunk].map((one) => solidsOf(part, one, tools));
    expect(volumeOf(larger.mesh) / volumeOf(plain.mesh)).toBeCloseTo(0.995 ** -3, 6);
    expect(volumeOf(moveMesh(larger.mesh, larger.toMold)) / volumeOf(plain.mesh)).toBeCloseTo(1, 5);
  }
});

test('what the plan asks of the form and cannot have is found', () => {
  const codes = (lines: string): string[] => {
    const text = `process: rubber\ndisc: { diameter: 9 in }\nsprue: { grip: 15, ${lines} }\n`;
    const { plan, findings } = readPlan(text, 'plan.yaml');
    return plan ? resolveLayout(plan, []).findings.map(({ code }) => code) : findings.map(({ code }) => code);
  };
  expect(codes('puller: { screw: M6 }')).toEqual([]);
  expect(codes('puller: { screw: 1/4-20 UNC, hole: insert }, flats: 3/4 in, vent: 0.3, pieces: two')).toEqual(
    [],
  );
  expect(codes('puller: { screw: M7 }')).toEqual(['layout.unknown-thread']);
  expect(codes('puller: { screw: M10, hole: insert }')).toEqual(['layout.unknown-thread']);
  expect(codes('puller: { screw: M16 }, flats: 16')).toEqual(['layout.sprue-thin']);
  expect(codes('puller: { screw: M6, depth: 60 }')).toEqual(['layout.sprue-thin']);
  expect(codes('flats: 40')).toEqual(['layout.sprue-thin']);
  expect(codes('puller: { srew: M6 }')).toContain('plan.unknown-key');
});

test.each([
  ['a shaft that runs out', { draftRad: 1.2 }],
  ['a fillet without room', { fillet: 9 }],
  ['a dome above the parting plane', { domeHeight: 9, domeRadius: 9 }],
  ['a well narrower than the hole', { wellRadius: 10 }],
])('%s is a fault with the solid named', (_, change) => {
  const mold = exampleMold({ sprue: { ...exampleSprue, ...change } });
  expect(() => solidsOf(sprueForm, mold, tools)).toThrow(KernelFault);
  expect(() => solidsOf(sprueForm, mold, tools)).toThrow(/sprue form/);
});

test('no sprue in the plan, no form and no plug', () => {
  const { sprue: _, ...mold } = exampleMold();
  expect(solidsOf(sprueForm, mold, tools)).toEqual([]);
  expect(solidsOf(plug, mold, tools)).toEqual([]);
});

describe('the label on the grip', () => {
  const at = (sprue: Sprue, words: readonly string[]) => {
    const room = gripRoom({ sprue, upper, smaller: 0, foot: 0, chordError: 0.01, holes: 0.2 });
    return layLabel(words, room).strokes.flat();
  };
  const puller = { screw: 'M6', diameter: 5, depth: 12 };

  it('goes round a puller hole: every stroke at least 1 mm from the hole, the edge, the vent and the flats', () => {
    for (const more of [{}, { vent: 0.5 }, { flats: 22 }]) {
      const sprue = { ...exampleSprue, ...more, puller };
      const points = at(sprue, ['sprue', 'r1']);
      expect(points.length).toBeGreaterThan(20);
      const far = points.map(([x, y]) => Math.hypot(x, y));
      const edge = shaftRadius(sprue, upper);
      // Half a stroke of 0.8 mm besides; letters are bent, so that a line's middle may come nearer than its ends.
      expect(Math.min(...far)).toBeGreaterThan(2.6 + 1 + 0.4 - 0.1);
      expect(Math.max(...far)).toBeLessThan(edge - 1 - 0.4 + 1e-9);
      expect(Math.max(...points.map(([x]) => x))).toBeLessThan(edge - ('vent' in more ? 0.5 : 0) - 1);
      if ('flats' in more) expect(Math.max(...points.map(([, y]) => Math.abs(y)))).toBeLessThan(10);
    }
  });

  it('is left off, and said to be, where the ring round the hole is narrower than letters', () => {
    const sprue = { ...exampleSprue, puller: { ...puller, diameter: 14 } };
    expect(at(sprue, ['sprue'])).toEqual([]);
    const [{ findings }] = sprueForm.units(exampleMold({ sprue })).map((unit) => unit.run(tools));
    expect(findings.map(({ code }) => code)).toEqual(['solid.label-left-off']);
  });
});
