import { describe, expect, it } from 'vitest';
import { orbitsOf, type Problem } from '../../src/arrange/problem.ts';
import { randomFrom } from '../../src/arrange/random.ts';
import { Strain } from '../../src/arrange/strain.ts';
import { fin, ground, kindOf, ngon, piece } from './pieces.ts';

const rich: Problem = {
  ground: { ...ground, radius: 60, well: { radius: 12, limit: 4 } },
  kinds: [
    kindOf('fin', fin(14, 8), { count: 4, gate: 2, weight: 3 }),
    kindOf('round', ngon(6, 40), { count: 3, gate: 2, vent: 1, weight: 1 }),
  ],
  fixed: [
    { id: 'boss', ...piece(ngon(5, 24)), x: 40, y: 5, turnRad: 0, limit: 4, gateLimit: 3, isPiece: false },
  ],
};

describe('limits that are broken, summed', () => {
  it('have the slopes that differences say', () => {
    const random = randomFrom(3);
    const orbits = rich.kinds.flatMap((kind) => orbitsOf(kind, kind.count, 3));
    const strain = new Strain(rich, orbits, 0.1);
    strain.goals[0] = { radius: 30, turnRad: 0.4, leanRad: 0.1 };
    strain.goals[1] = { angleRad: 1 };
    let worst = 0;
    let checked = 0;
    for (let round = 0; round < 12; round++) {
      const x = Float64Array.from({ length: 4 * orbits.length }, (_, k) =>
        k % 4 < 2 ? 90 * (random() - 0.5) : 12 * (random() - 0.5),
      );
      const slopes = new Float64Array(x.length);
      const scratch = new Float64Array(x.length);
      strain.at(x, slopes);
      const size = Math.hypot(...slopes);
      for (let k = 0; k < x.length; k++) {
        const h = 1e-6;
        const moved = (by: number): number => strain.at(x.with(k, x[k] + by), scratch);
        const [up, down, middle] = [moved(h), moved(-h), moved(0)];
        // Where a kink lies between, differences to both sides say different things.
        if (Math.abs(up + down - 2 * middle) > 1e-4 * h * size) continue;
        checked++;
        worst = Math.max(worst, Math.abs((up - down) / (2 * h) - slopes[k]) / size);
      }
    }
    expect(checked).toBeGreaterThan(120);
    expect(worst).toBeLessThan(1e-5);
  });
});
