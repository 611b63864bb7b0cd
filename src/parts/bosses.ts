import { type Boss, type Mold, type Part, part } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';
import { uprightBoss } from './boss-body.ts';
import { withoutSpots } from './without-spots.ts';

/** Bosses of one shape: one solid, to be made as often as it is used. */
interface BossKind {
  readonly id: string;
  readonly shape: Boss;
  readonly used: readonly string[];
  readonly chordError: number;
  readonly compensation: number | undefined;
}

/**
 * Registration bosses as loose bodies, one solid for each shape: all kinds where they are laid into rubber; only cap
 * nuts for rigid and poured halves, whose domes and cones are one with the lower half. Stands on its root.
 */
export const bosses: Part = part({
  id: 'bosses',
  title: 'registration bosses',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: (mold) => bossKinds(mold).map((kind) => ({ subject: kind.used[0], input: kind })),
  run: ({ id, shape, used, chordError, compensation }, { kernel }) =>
    kernel.scope((scope) => [
      asSolid(scope, uprightBoss(scope, shape, chordError, 'pin'), onBed(-shape.rootDepth), {
        id,
        title: `${shape.kind} ${shape.size}, ${used.length} ${used.length === 1 ? 'time' : 'times'}`,
        role: 'boss',
        subjects: used,
        compensation,
      }),
    ]),
});

function bossKinds({ process, bosses: all, fixture }: Mold): BossKind[] {
  const loose = withoutSpots(all).filter(({ kind }) => process === 'rubber' || kind === 'cap nut');
  const groups = new Map<string, Omit<Boss, 'at'>[]>();
  for (const boss of loose) {
    const { kind, size, acrossFlats, rootDepth, headRadius, headHeight } = boss;
    const key = JSON.stringify([kind, size, acrossFlats, rootDepth, headRadius, headHeight]);
    groups.set(key, [...(groups.get(key) ?? []), boss]);
  }
  const taken = new Map<string, number>();
  return [...groups.values()].map((group) => {
    const [first] = group;
    const stem = `boss-${first.kind}-${first.size}`.toLowerCase().replace(/[^a-z0-9.]+/g, '-');
    const before = taken.get(stem) ?? 0;
    taken.set(stem, before + 1);
    return {
      id: before === 0 ? stem : `${stem}-${before + 1}`,
      // About its own axis: where it stands does not matter to its shape.
      shape: { ...first, id: stem, x: 0, y: 0, turnRad: 0, clearance: 0 },
      used: group.map(({ id }) => id),
      chordError: fixture.chordError,
      compensation: fixture.compensation,
    };
  });
}
