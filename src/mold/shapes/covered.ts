import type { Mold } from '../mold.ts';
import { bossSpace } from './boss.ts';
import type { Space } from './space.ts';
import { sprueSpace } from './sprue.ts';

/** A fixture that the halves have to cover, standing at (x, y). */
export interface CoveredFixture extends Space {
  readonly id: string;
  readonly kind: 'boss' | 'sprue form';
  readonly x: number;
  readonly y: number;
}

/** All fixtures that stand into the halves, bosses in the plan's order, then the sprue form's well. */
export function coveredFixtures({
  bosses,
  sprue,
  process,
}: Pick<Mold, 'bosses' | 'sprue' | 'process'>): CoveredFixture[] {
  const well = sprue && ({ id: 'sprue', kind: 'sprue form', x: 0, y: 0, ...sprueSpace(sprue) } as const);
  return [
    ...bosses.map(
      (boss) => ({ id: boss.id, kind: 'boss', x: boss.x, y: boss.y, ...bossSpace(boss, process) }) as const,
    ),
    ...(well ? [well] : []),
  ];
}
