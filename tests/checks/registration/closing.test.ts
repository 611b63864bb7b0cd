import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closing } from '../../../src/checks/registration/closing.ts';
import type { Boss } from '../../../src/mold/index.ts';
import { Pattern, type Peg } from '../../../src/physics/index.ts';
import { emptyMold, figureOf, nutAt, runCheck } from '../small-mold.ts';

const degrees = 180 / Math.PI;

const peg = (radius: number, angle: number, headRadius = 6, headHeight = 8): Peg => ({
  x: radius * Math.cos(angle / degrees),
  y: radius * Math.sin(angle / degrees),
  headRadius,
  headHeight,
});

const nearest = (pegs: readonly Peg[], slack = 0.3): { angle: number; misfit: number } => {
  const [seat] = new Pattern(pegs, slack).falseSeats(Number.POSITIVE_INFINITY);
  return { angle: seat.angleRad * degrees, misfit: seat.misfit };
};

describe('nearest false seat, against closed forms', () => {
  it.each([2, 3, 4, 6])('%d even and equal bosses close again after one step', (n) => {
    const even = Array.from({ length: n }, (_, i) => peg(100, (360 * i) / n));
    const seats = new Pattern(even, 0.3).falseSeats(1);
    expect(seats.map(({ angleRad }) => Math.round(angleRad * degrees))).toEqual(
      Array.from({ length: n - 1 }, (_, i) => (360 * (i + 1)) / n),
    );
    for (const { misfit } of seats) expect(misfit).toBeLessThan(1e-5);
  });

  // Bosses at 0, 90, 180, 270 + delta: turned by a quarter, two are off by delta whichever way: chord 2 R sin(delta / 2).
  it.each([1, 5, 12])('one of four moved by %d degrees along the rim', (delta) => {
    const { angle, misfit } = nearest([peg(100, 0), peg(100, 90), peg(100, 180), peg(100, 270 + delta)]);
    expect(misfit).toBeCloseTo(200 * Math.sin(delta / 2 / degrees), 6);
    expect([90, 180, 270]).toContain(Math.round(angle));
  });

  // Four bosses, one moved by 5 degrees: the nearest misses by 8.7 mm, and is given although no seat is within 1 mm.
  it('where none is as near as asked, the nearest alone; nearest first where all are', () => {
    const pattern = new Pattern([peg(100, 0), peg(100, 90), peg(100, 180), peg(100, 275)], 0.3);
    expect(pattern.falseSeats(1)).toHaveLength(1);
    const uneven = new Pattern([peg(100, 0), peg(100, 100), peg(100, 170), peg(100, 290)], 0.3);
    const misfits = uneven.falseSeats(200).map(({ misfit }) => misfit);
    expect(misfits.length).toBeGreaterThan(1);
    expect(misfits).toEqual(misfits.toSorted((a, b) => a - b));
    expect(new Set(misfits.map(Math.round)).size).toBeGreaterThan(1);
  });

  // Two bosses opposite each other at different radii: turned half round both miss by the difference.
  it('two opposite bosses at radii 100 and 80', () => {
    const { angle, misfit } = nearest([peg(100, 30), peg(80, 210)]);
    expect(misfit).toBeCloseTo(20, 9);
    expect(angle).toBeCloseTo(180, 9);
  });

  // Two equal bosses at 0 and beta: the seat that swaps them takes boss 0 to beta and the other to 2 beta, which is
  // 0 only for 180 degrees; balanced, each is off by (360 - 2 beta) / 2 = 180 - beta.
  it('two equal bosses 170 degrees apart: swapped, each off by 10 degrees', () => {
    const { angle, misfit } = nearest([peg(100, 0), peg(100, 170)]);
    expect(misfit).toBeCloseTo(200 * Math.sin(5 / degrees), 6);
    expect(angle).toBeCloseTo(180, 6);
  });

  it('a head too wide or too high for the other sockets leaves no false seat', () => {
    for (const odd of [peg(100, 0, 8), peg(100, 0, 6, 10)]) {
      const even = [odd, peg(100, 90), peg(100, 180), peg(100, 270)];
      const pattern = new Pattern(even, 0.3);
      // The odd one can only sit in its own socket, so the misfit is at least its chord.
      expect(pattern.misfit(Math.PI / 2)).toBeCloseTo(100 * Math.SQRT2, 9);
      expect(pattern.falseSeats(3)).toEqual([]);
      // A difference within the slack does not tell them apart.
      expect(new Pattern(even, 2.5).falseSeats(3)).toHaveLength(3);
    }
  });
});

/** All bosses to all sockets by every permutation. */
function plainMisfit(pegs: readonly Peg[], angle: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const gap = (i: number, j: number): number =>
    Math.hypot(pegs[i].x * c - pegs[i].y * s - pegs[j].x, pegs[i].x * s + pegs[i].y * c - pegs[j].y);
  const best = (i: number, left: readonly number[], worst: number): number =>
    i === pegs.length
      ? worst
      : Math.min(
          ...left.map((j) =>
            best(
              i + 1,
              left.filter((k) => k !== j),
              Math.max(worst, gap(i, j)),
            ),
          ),
        );
  return best(
    0,
    pegs.map((_, i) => i),
    0,
  );
}

const patterns = fc.array(
  fc.record({ radius: fc.integer({ min: 30, max: 110 }), angle: fc.integer({ min: 0, max: 359 }) }),
  { minLength: 2, maxLength: 5 },
);

describe('any pattern', () => {
  it('misfit agrees with trying every permutation', () => {
    fc.assert(
      fc.property(patterns, fc.double({ min: 0, max: 6.28, noNaN: true }), (list, angle) => {
        const pegs = list.map(({ radius, angle: at }) => peg(radius, at));
        expect(new Pattern(pegs, 0.3).misfit(angle)).toBeCloseTo(plainMisfit(pegs, angle), 5);
      }),
      { numRuns: 200, seed: 7 },
    );
  });

  it('no angle between the true seat and the next hill is better than the nearest false seat', () => {
    fc.assert(
      fc.property(patterns, (list) => {
        const pegs = list.map(({ radius, angle }) => peg(radius, angle));
        const pattern = new Pattern(pegs, 0.3);
        const seats = pattern.falseSeats(Number.POSITIVE_INFINITY);
        const best = seats.length > 0 ? seats[0].misfit : Number.POSITIVE_INFINITY;
        // Walk down from every sampled valley: samples lower than both neighbours, far from angle 0.
        const d = Array.from({ length: 1440 }, (_, i) => pattern.misfit((i * Math.PI) / 720));
        for (let i = 1; i < 1439; i++) {
          if (d[i] < d[i - 1] && d[i] < d[i + 1]) expect(d[i]).toBeGreaterThanOrEqual(best - 1e-6);
        }
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  it('does not depend on order or on a turn of the whole, and grows with the pattern', () => {
    const list = [peg(100, 3), peg(98, 95), peg(101, 170), peg(90, 262), peg(100, 300)];
    const plain = nearest(list);
    const turned = nearest(
      list.map(({ x, y, ...head }) => ({ ...head, x: x * 0.6 - y * 0.8, y: x * 0.8 + y * 0.6 })),
    );
    expect(turned.misfit).toBeCloseTo(plain.misfit, 7);
    expect(turned.angle).toBeCloseTo(plain.angle, 5);
    expect(nearest([...list].reverse()).misfit).toBeCloseTo(plain.misfit, 9);
    expect(nearest(list.map((one) => ({ ...one, x: 2 * one.x, y: 2 * one.y }))).misfit).toBeCloseTo(
      2 * plain.misfit,
      7,
    );
    const mirrored = new Pattern(
      list.map((one) => ({ ...one, y: -one.y })),
      0.3,
    ).falseSeats(Number.POSITIVE_INFINITY);
    expect(mirrored[0].misfit).toBeCloseTo(plain.misfit, 7);
  });
});

const ring = (...nuts: readonly (readonly [number, number, Partial<Boss>?])[]): Boss[] =>
  nuts.map(([radius, angle, other], i) => {
    const { x, y } = peg(radius, angle);
    return nutAt(`boss-${i + 1}`, x, y, other);
  });

describe('the check', () => {
  it('stops an even pattern of equal nuts, with angle and misfit', async () => {
    const report = await runCheck(closing, { ...emptyMold, bosses: ring([100, 0], [100, 120], [100, 240]) });
    expect(report.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['registration.closes-turned', 'stop'],
    ]);
    expect(figureOf(report, 'registration.falseSeat', 'mold')).toBeLessThan(1e-5);
    expect(figureOf(report, 'registration.falseSeatAngle', 'mold')).toBeCloseTo(120, 4);
    expect(figureOf(report, 'registration.falseSeats', 'mold')).toBe(2);
  });

  // Common practice, no published source: unequal cap nuts near the rim leave one way to close.
  it('passes unequal cap nuts', async () => {
    const wide = { size: 'M12', acrossFlats: 18, headRadius: 8.5, headHeight: 12, rootDepth: 10 };
    const report = await runCheck(closing, {
      ...emptyMold,
      bosses: ring([100, 0, wide], [100, 120], [100, 240]),
    });
    expect(report.findings).toEqual([]);
    expect(figureOf(report, 'registration.falseSeats', 'mold')).toBe(0);
  });

  it('wants more than the widest head is across half: 2 R sin(delta / 2) about 6.25', async () => {
    // 6.25 mm at 100 mm is 3.58 degrees.
    const moved = (delta: number): Boss[] => ring([100, 0], [100, 90], [100, 180], [100, 270 + delta]);
    const close = await runCheck(closing, { ...emptyMold, bosses: moved(3.4) });
    expect(close.findings).toHaveLength(1);
    expect(close.findings[0].values.measured).toBeCloseTo(200 * Math.sin(1.7 / degrees), 5);
    expect(close.findings[0].values.limit).toBe(6.25);
    expect((await runCheck(closing, { ...emptyMold, bosses: moved(3.8) })).findings).toEqual([]);
  });

  it('says so of fewer than two bosses, but not of a sprue form alone', async () => {
    const one = await runCheck(closing, { ...emptyMold, bosses: ring([100, 0]) });
    expect(one.findings.map(({ code }) => code)).toEqual(['registration.too-few']);
    expect(closing.units(emptyMold)).toEqual([]);
  });

  it('plots the misfit over the whole turn, 0 at both ends', async () => {
    const { series } = await runCheck(closing, {
      ...emptyMold,
      bosses: ring([100, 0], [100, 90], [80, 215]),
    });
    expect(series.map(({ name }) => name)).toEqual([
      'registration.misfit',
      ...Array(3).fill('registration.off'),
      'registration.seats',
    ]);
    const { x, y } = series[0];
    for (let degree = 0; degree <= 360; degree++) expect(x.values).toContain(degree);
    for (let i = 1; i < x.values.length; i++) expect(x.values[i]).toBeGreaterThan(x.values[i - 1]);
    expect(y.values.at(0)).toBeCloseTo(0, 5);
    expect(y.values.at(-1)).toBeCloseTo(0, 5);
    // The widest head's radius is more than the 3 mm of the plan.
    expect(series[0].limit?.value).toBe(6.25);
    expect(Math.max(...y.values)).toBeGreaterThan(20);
    const seats = series[4];
    expect(seats.x.values.length).toBeGreaterThan(0);
    for (const [i, angle] of seats.x.values.entries()) {
      const at = x.values.indexOf(angle);
      expect(y.values[at]).toBeCloseTo(seats.y.values[i], 9);
      // Looked at finely there: nothing beside it is lower, and a tenth of a degree away there is a point of the curve.
      expect(y.values[at]).toBeLessThanOrEqual(Math.min(y.values[at - 1], y.values[at + 1]));
      expect(x.values[at + 1] - x.values[at - 1]).toBeLessThanOrEqual(0.2 + 1e-9);
    }
  });

  it('says how far each boss is off: a chord of its circle, 2 R sin(a / 2) (Euclid III), where no other socket is near', () => {
    const offsets = new Pattern([peg(100, 0), peg(60, 180)], 0.3).offsets(30 / degrees);
    expect(offsets[0]).toBeCloseTo(200 * Math.sin(15 / degrees), 6);
    expect(offsets[1]).toBeCloseTo(120 * Math.sin(15 / degrees), 6);
  });
});

describe('what is shown of a pattern', () => {
  // Bosses at 0, 90, 180 and 275 degrees: turned by a quarter two of them miss by the chord of 5 degrees.
  const bosses = [0, 90, 180, 275].map((angle, i) => {
    const { x, y } = peg(100, angle);
    return nutAt(`nut-${i}`, x, y);
  });
  const mold = { ...emptyMold, bosses };
  const chord = 200 * Math.sin(2.5 / degrees);

  it('runs over the whole turn, finest about each least misfit, and lies on the misfit of each boss', async () => {
    const { series } = await runCheck(closing, mold);
    const [misfit, ...others] = series.filter(({ name }) => name !== 'registration.seats');
    const { x, y, limit } = misfit;
    expect([x.values[0], x.values.at(-1)]).toEqual([0, 360]);
    expect(x.values).toEqual([...x.values].sort((a, b) => a - b));
    expect(limit?.value).toBe(6.25);
    // A quarter turn: two are off by the chord of 5 degrees; at 45 degrees, in the middle between sockets, it is no least.
    const at = (angle: number) => y.values[x.values.findIndex((one) => Math.abs(one - angle) < 1e-9)];
    expect(at(90)).toBeCloseTo(chord, 6);
    expect(at(0)).toBeCloseTo(0, 9);
    expect(at(360)).toBeCloseTo(0, 6);
    for (const fine of [0.9, 89.1, 90.9, 359.1]) expect(at(fine), `${fine}`).toBeGreaterThan(0);
    expect(at(45.1)).toBeUndefined();
    expect(others.map(({ subject }) => subject)).toEqual(['nut-0', 'nut-1', 'nut-2', 'nut-3']);
    for (const [k, most] of y.values.entries())
      expect(Math.max(...others.map((one) => one.y.values[k]))).toBeCloseTo(most, 9);
  });

  it('the seats shown are those counted, in degrees, and a misfit as wide as wanted is not within', async () => {
    const report = await runCheck(closing, mold);
    const seats = report.series.find(({ name }) => name === 'registration.seats');
    const angle = figureOf(report, 'registration.falseSeatAngle', 'mold');
    expect([90, 180, 270].some((one) => Math.abs(one - angle) < 5.1)).toBe(true);
    expect(seats?.x.values).toContain(angle);
    expect(seats?.y.values[0]).toBe(figureOf(report, 'registration.falseSeat', 'mold'));
    const nearest = figureOf(report, 'registration.falseSeat', 'mold');
    const wide = (falseSeat: number) => runCheck(closing, { ...mold, limits: { ...mold.limits, falseSeat } });
    // A limit under the radius of the heads does not count.
    expect(nearest).toBeGreaterThan(6.25);
    const just = await wide(nearest);
    expect([just.findings, figureOf(just, 'registration.falseSeats', 'mold')]).toEqual([[], 0]);
    const over = await wide(nearest + 1e-9);
    expect(over.findings.map(({ values }) => values.angle)).toEqual([angle]);
    expect(figureOf(over, 'registration.falseSeats', 'mold')).toBeGreaterThan(0);
    expect(report.figures.every(({ estimated }) => !estimated)).toBe(true);
  });

  it('two bosses are enough to be judged, one is too few, and none is no question without a placement', async () => {
    const [first, second] = bosses;
    const found = async (some: typeof bosses) =>
      (await runCheck(closing, { ...mold, bosses: some })).findings.map(({ code, values }) => [
        code,
        values.measured,
      ]);
    expect(await found([first])).toEqual([['registration.too-few', 1]]);
    expect((await found([first, second])).map(([code]) => code)).not.toContain('registration.too-few');
    expect(closing.units({ ...mold, bosses: [] })).toEqual([]);
  });
});
