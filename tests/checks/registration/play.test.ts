import { describe, expect, it } from 'vitest';
import { mismatch } from '../../../src/checks/registration/mismatch.ts';
import { play } from '../../../src/checks/registration/play.ts';
import { compose, moveMesh, rotation, translation } from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, withMaster } from '../small-mold.ts';

/** Domes on a collar, in whose sockets the gap sideways is the clearance. */
const pair = (clearance: number): Mold['bosses'] =>
  [100, -100].map((x) => nutAt(`dome-${x}`, x, 0, { kind: 'dome', acrossFlats: 0, clearance }));
const rigid: Mold = { ...emptyMold, process: 'rigid', bosses: pair(0.15) };
const brick = single(box([-4, -3, -2], [4, 3, 2]));

describe('play', () => {
  // Two equal pins at R 100 with c 0.15: shift c, turn c / R = 0.0015 rad = 0.085944 degrees.
  it('of rigid halves comes from the clearances of the sockets', async () => {
    const report = await runCheck(play, rigid);
    expect(figureOf(report, 'registration.shift', 'mold')).toBeCloseTo(0.15, 6);
    expect(figureOf(report, 'registration.turn', 'mold')).toBeCloseTo(0.085944, 5);
    expect(report.figures.every(({ estimated }) => !estimated)).toBe(true);
    expect(report.findings).toEqual([]);
  });

  // A nut lies loose in its pocket too: there it can move c to a flat of the hexagon, 2 c / sqrt 3 to a corner.
  it('of rigid halves with cap nuts has that in their pockets besides', async () => {
    const nuts = [100, -100].map((x) => nutAt(`nut-${x}`, x, 0, { clearance: 0.15 }));
    const report = await runCheck(play, { ...rigid, bosses: nuts });
    const both = 0.15 * (1 + 2 / Math.sqrt(3));
    expect(figureOf(report, 'registration.shift', 'mold')).toBeCloseTo(both, 6);
  });

  it('of rubber halves comes from the flex of the plan, as an estimate', async () => {
    const report = await runCheck(play, { ...emptyMold, bosses: pair(0), flex: 0.15 });
    expect(figureOf(report, 'registration.shift', 'mold')).toBeCloseTo(0.15, 6);
    expect(report.figures.every(({ estimated }) => estimated)).toBe(true);
  });

  it('asks for the flex where the plan has none, and invents no figure', async () => {
    const mold = withMaster({ ...emptyMold, bosses: pair(0) }, 'brick', brick, translation(50, 0, 0));
    const report = await runCheck(play, mold);
    expect(report.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['registration.no-flex', 'note'],
    ]);
    expect(report.figures).toEqual([]);
    expect(mismatch.units(mold)).toEqual([]);
  });

  it('says nothing of fewer than two bosses: the closing check does', () => {
    expect(play.units({ ...rigid, bosses: pair(0.15).slice(0, 1) })).toEqual([]);
    expect(play.units({ ...rigid, bosses: [] })).toEqual([]);
  });
});

describe('mismatch at the cavities', () => {
  // Beyond two pins at +-R on their line the far end at L moves by c L / R; the brick's corner is at (114, 3), where
  // the sideways part c L / R and the part along the line, at most c, are bound by the same circles.
  it('is found at the cavity\u2019s outermost points', async () => {
    const mold = withMaster(rigid, 'brick', brick, translation(110, 0, 0));
    const report = await runCheck(mismatch, mold);
    const value = figureOf(report, 'registration.mismatch', 'brick-1');
    expect(value).toBeGreaterThan((0.15 * 114) / 100);
    expect(value).toBeLessThan((0.15 * Math.hypot(114, 3)) / 100 + 0.15 * 0.03);
    expect(report.figures[0].places?.[0][0]).toBeCloseTo(114, 6);
    expect(report.findings).toEqual([]);
  });

  it('warns past the limit, at the place', async () => {
    const loose = { ...rigid, bosses: pair(0.5) };
    const { findings } = await runCheck(mismatch, withMaster(loose, 'brick', brick, translation(0, 60, 0)));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: 'registration.mismatch',
      severity: 'warn',
      subject: 'brick-1',
    });
    expect(findings[0].values.limit).toBe(0.4);
  });

  // Pins at +-R on one line allow a shift along it and a turn t with shift^2 + (R t)^2 <= c^2; a point (x, y) then moves by
  // (shift - t y, t x), at most c times the root of the greater eigenvalue of [[1, y / R], [y / R, (x^2 + y^2) / R^2]].
  it('looks at the placed master, turned and lifted as it stands, and says where', async () => {
    const square = single(box([-5, -5, -2], [5, 5, 2]));
    const matrix = compose(translation(60, 40, 3), rotation('z', Math.PI / 4));
    const mold = withMaster(rigid, 'tile', square, matrix);
    const { figures } = await runCheck(mismatch, mold);
    expect(figures).toHaveLength(1);
    const farthest = 40 + 5 * Math.SQRT2;
    expect(figures[0].places).toEqual([
      [expect.closeTo(60, 4), expect.closeTo(farthest, 4), expect.any(Number)],
    ]);
    expect(Math.abs((figures[0].places?.[0][2] ?? 0) - 3)).toBeCloseTo(2, 6);
    const [bend, turn] = [farthest / 100, (60 ** 2 + farthest ** 2) / 1e4];
    const greater = (1 + turn) / 2 + Math.hypot((1 - turn) / 2, bend);
    expect(figures[0].value).toBeCloseTo(0.15 * Math.sqrt(greater), 5);
    expect(figures[0].estimated).toBe(false);
  });

  it.each([0, 0.9, 2.1, 3.3, 4.6])(
    'is found among all vertices of a long body turned by %d',
    async (turn) => {
      // A ball drawn out to a spindle 24 mm long and 4 mm thick, askew in its own frame.
      const { positions, triangles } = single(ball(1, [0, 0, 0], 12, 16));
      const askew = compose(rotation('z', 0.5), rotation('y', 0.7));
      const drawn = Float32Array.from(positions, (one, i) => one * (i % 3 === 0 ? 12 : 2));
      const spindle = { positions: moveMesh({ positions: drawn, triangles }, askew).positions, triangles };
      const most = ([x, y]: readonly number[]): number => {
        const [bend, turn] = [y / 100, (x * x + y * y) / 1e4];
        return 0.15 * Math.sqrt((1 + turn) / 2 + Math.hypot((1 - turn) / 2, bend));
      };
      const matrix = compose(
        translation(60 * Math.cos(turn), -60 * Math.sin(turn), 1),
        rotation('z', turn),
        rotation('x', turn / 2),
      );
      const { positions: placed } = moveMesh(spindle, matrix);
      const vertices = Array.from({ length: placed.length / 3 }, (_, v) => [
        ...placed.slice(3 * v, 3 * v + 2),
      ]);
      const greatest = Math.max(...vertices.map(most));
      const { figures } = await runCheck(mismatch, withMaster(rigid, 'spindle', spindle, matrix));
      // Directions are 15 degrees apart, so the farthest is missed by 1 - cos 7.5 degrees of the body's own reach at most.
      expect(figures[0].value / greatest).toBeGreaterThan(0.998);
      expect(figures[0].value / greatest).toBeLessThan(1.00001);
      expect(most(figures[0].places?.[0] ?? [])).toBeCloseTo(figures[0].value, 5);
    },
  );

  it('is an estimate of rubber, and of a master whose shape is one', async () => {
    const of = async (mold: Mold) =>
      (await runCheck(mismatch, mold)).figures.map(({ estimated }) => estimated);
    const known = withMaster(rigid, 'brick', brick, translation(50, 0, 0));
    expect(await of(known)).toEqual([false]);
    expect(
      await of({ ...known, placements: known.placements.map((one) => ({ ...one, estimated: true })) }),
    ).toEqual([true]);
    expect(await of({ ...known, process: 'rubber', flex: 0.15 })).toEqual([true]);
  });

  it('is allowed up to the limit itself', async () => {
    const mold = withMaster(rigid, 'brick', brick, translation(110, 0, 0));
    const most = figureOf(await runCheck(mismatch, mold), 'registration.mismatch', 'brick-1');
    const under = (limit: number) =>
      runCheck(mismatch, { ...mold, limits: { ...mold.limits, mismatch: limit } });
    expect((await under(most)).findings).toEqual([]);
    expect((await under(most - 1e-9)).findings.map(({ code }) => code)).toEqual(['registration.mismatch']);
  });
});
