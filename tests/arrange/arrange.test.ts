import { describe, expect, it } from 'vitest';
import { arrange, holdsAll } from '../../src/arrange/arrange.ts';
import { judge, type Laid } from '../../src/arrange/judge.ts';
import type { Fixed, Kind, Problem } from '../../src/arrange/problem.ts';
import { fin, ground, kindOf, ngon, piece } from './pieces.ts';

const effort = { starts: 4, movesEach: 3, moves: 20 };
const well = { radius: 12, limit: 4 };
const fins = kindOf('fin', fin(11, 6), { count: 4, gate: 2, weight: 3 });
const rounds = kindOf('round', ngon(5, 24), { count: 4, gate: 2, weight: 1 });
const boss = (angle: number): Fixed => ({
  id: 'boss',
  ...piece(ngon(4, 24)),
  x: 48 * Math.cos(angle),
  y: 48 * Math.sin(angle),
  turnRad: angle,
  limit: 4,
  gateLimit: 3,
  isPiece: false,
});
const problem = (kinds: readonly Kind[], fixed: readonly Fixed[] = [], more = {}): Problem => ({
  ground: { ...ground, well, ...more },
  kinds,
  fixed,
});
const quality = (one: Problem, seed = 1) => {
  const { laid, left, wall } = arrange(one, { effort, seed });
  expect(judge(one, laid).broken).toEqual([]);
  return { count: laid.reduce((sum, { copies }) => sum + copies, 0), left: left.length, wall };
};

describe('what is arranged', () => {
  const usual = quality(problem([fins, rounds], [boss(0), boss(2)]));

  it('lies within all limits, with ample walls', () => {
    expect(usual).toMatchObject({ count: 8, left: 0 });
    expect(usual.wall).toBeGreaterThanOrEqual(ground.ample);
  });

  it.each([
    ['in another order', [rounds, fins], 0],
    [
      'under other names',
      [
        { ...fins, id: 'a' },
        { ...rounds, id: 'b' },
      ],
      0,
    ],
    ['on a disc that is turned', [fins, rounds], 1.234],
  ] as const)('is as good %s', (_, kinds, turned) => {
    const again = quality(problem(kinds, [boss(turned), boss(2 + turned)]));
    expect(again).toMatchObject({ count: 8, left: 0 });
    expect(again.wall).toBeGreaterThanOrEqual(ground.ample);
  });

  it('is the same for the same seed', () => {
    const run = () => arrange(problem([fins, rounds]), { effort, seed: 7 });
    expect(run()).toEqual(run());
  });

  it('leaves what finds no place, the least of worth, and says how many', () => {
    const dear = { ...rounds, count: 3, worth: 50 };
    const wide = { ...fins, count: 5 };
    const tight = problem([wide, dear], [], { radius: 33 });
    const { laid, left } = arrange(tight, { effort: { starts: 1, movesEach: 1, moves: 4 }, seed: 1 });
    expect(judge(tight, laid).broken).toEqual([]);
    expect(left.map(({ kind }) => kind.id)).toEqual(['fin']);
    const lies = laid.reduce((sum, { kind, copies }) => sum + (kind === wide ? copies : 0), 0);
    expect(lies + left[0].count).toBe(5);
    expect(holdsAll(tight, { effort: { starts: 1, movesEach: 0, moves: 0 }, seed: 1 })).toBe(false);
  });

  it('stands so far apart that the parting surface can rise from one to the other', () => {
    const high = { ...rounds, level: 4 };
    const low = { ...fins, level: -2 };
    // 6 mm up at a slope of 1 take 6 mm of way, where the wall asks for 2.
    const steep = problem([high, low], [], { slope: 1, ample: 2 });
    const { laid, left } = arrange(steep, { effort, seed: 1 });
    expect(left).toEqual([]);
    expect(judge(steep, laid).broken).toEqual([]);
    const steeper = problem([high, low], [], { slope: 0.5, ample: 2 });
    const walls = judge(steeper, laid).broken.filter(({ what }) => what === 'wall' || what === 'rim');
    for (const { limit } of walls) expect([12, 8, 5]).toContain(limit);
  });
});

// By hand: squares of 10 mm about the axis of a disc of 60 mm with a well of 12 mm.
describe('what judges a layout', () => {
  const square = kindOf(
    'tile',
    [
      [-5, -5],
      [5, -5],
      [5, 5],
      [-5, 5],
    ],
    { count: 2 },
  );
  const at = (radius: number, angleRad: number, more: Partial<Laid> = {}): Laid => ({
    ...{ kind: square, copies: 1, radius, angleRad, turnRad: 0, leanRad: 0, mouth: 0 },
    ...more,
  });
  const bare = (laid: readonly Laid[], fixed: readonly Fixed[] = []) => judge(problem([square], fixed), laid);

  it('measures the wall between two sides', () => {
    const { wall, broken } = bare([at(30, 0), at(30, Math.PI / 2)]);
    // Nearest corners (25, 5) and (5, 25).
    expect(wall).toBeCloseTo(Math.hypot(20, 20), 9);
    expect(broken).toEqual([]);
    // Four round the axis at 17 mm: (12, 5) and (5, 12).
    expect(bare([at(17, 0, { copies: 4 })]).wall).toBeCloseTo(Math.hypot(7, 7), 9);
  });

  it('finds what lies in another, and within a side', () => {
    expect(bare([at(30, 0), at(31, 0)]).wall).toBe(0);
    const small = kindOf('pea', ngon(1, 12), { count: 1 });
    expect(bare([at(30, 0), at(30, 0, { kind: small })]).wall).toBe(0);
  });

  it('measures to rim and well', () => {
    // Farthest corner of one at r: sqrt((r + 5)^2 + 25); nearest side r - 5.
    const [rim] = bare([at(50, 0)]).broken;
    expect(rim).toMatchObject({ what: 'rim', limit: 5 });
    expect(rim.measured).toBeCloseTo(60 - Math.hypot(55, 5), 9);
    const [near] = bare([at(20, 0)]).broken;
    expect(near).toMatchObject({ what: 'well', limit: 4 });
    expect(near.measured).toBeCloseTo(3, 9);
  });

  it('measures from a gate to another piece and to another gate', () => {
    const gated = kindOf(
      'gated',
      [
        [-5, -5],
        [5, -5],
        [5, 5],
        [-5, 5],
      ],
      { count: 1, gate: 2 },
    );
    const one = at(40, 0, { kind: gated, mouth: 0 });
    // The gate laps by half its width into the corner (-5, -5): from (36, -5) straight to the axis.
    const angle = 0.2;
    const { broken } = bare([one, at(25, angle)]);
    const gate = broken.find(({ what }) => what === 'gate');
    const line = (t: number) => [36 * t, -5 * t];
    let least = Number.POSITIVE_INFINITY;
    for (let t = 0.33; t <= 1; t += 1e-4) {
      const [x, y] = line(t);
      const [u, v] = [
        x * Math.cos(angle) + y * Math.sin(angle) - 25,
        -x * Math.sin(angle) + y * Math.cos(angle),
      ];
      least = Math.min(least, Math.hypot(Math.max(0, Math.abs(u) - 5), Math.max(0, Math.abs(v) - 5)));
    }
    expect(gate?.measured).toBeCloseTo(least - 1, 3);
    const two = bare([one, at(40, 2 * Math.asin(1 / 12) - 0.02, { kind: gated, mouth: 0 })]);
    // Both run to the axis: nearest where they come out of the well, a chord less their width.
    const gates = two.broken.find(({ what }) => what === 'gates');
    expect(gates?.measured).toBeLessThan(1.5);
  });

  it('finds a gate that passes the well by', () => {
    const gated = kindOf('gated', ngon(4, 12), { count: 1, gate: 2 });
    const { broken } = bare([at(40, 0, { kind: gated, leanRad: 0.5 })]);
    expect(broken.map(({ what }) => what)).toContain('no-gate');
  });
});
