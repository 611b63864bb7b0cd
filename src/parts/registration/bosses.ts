import { compose, translation, upsideDown } from '../../geometry/index.ts';
import { type Boss, cornerShare, isLoose, type Mold, type Part, task } from '../../mold/index.ts';
import {
  asSolid,
  type LabelRoom,
  labelCutter,
  labelFindings,
  labelStroke,
  leastLetters,
  onBed,
  roomInRound,
} from '../making/index.ts';
import { uprightBoss } from './boss-body.ts';

/** Bosses of one shape: one solid, to be made as often as it is used. */
export interface BossKind {
  readonly id: string;
  readonly shape: Boss;
  readonly used: readonly string[];
}

/**
 * Registration bosses as loose bodies, one solid for each shape: all kinds where they are laid into rubber; only cap
 * nuts for rigid and poured halves, whose other bosses are one with the lower half. Stands on its root, which has the
 * size engraved underneath where there is room; an index mark would tell nothing of a thing that is round or six-sided.
 */
export const bosses: Part = task({
  id: 'bosses',
  title: 'registration bosses',
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => {
    const { chordError, compensation } = mold.fixture;
    return bossKinds(mold).map((kind) => ({
      subject: kind.used[0],
      about: kind.used,
      input: { ...kind, chordError, compensation },
    }));
  },
  run: ({ id, shape, used, chordError, compensation }, { kernel }) => {
    const { acrossFlats, headRadius } = shape;
    const room = acrossFlats > 0 ? hexagonRoom(acrossFlats / 2) : faceRoom(headRadius);
    const title = `${shape.kind} ${shape.size}, ${used.length} ${used.length === 1 ? 'time' : 'times'}`;
    const solid = kernel.scope((scope) => {
      const plain = uprightBoss(scope, shape, chordError, 'pin');
      const label = labelCutter(scope, [shape.size], room);
      const under = compose(translation(0, 0, -shape.rootDepth), upsideDown);
      const body = label ? scope.subtract(plain, [scope.move(label, under, id)], id) : plain;
      return asSolid(scope, body, onBed(-shape.rootDepth), {
        id,
        title,
        role: 'boss',
        subjects: used,
        compensation,
      });
    });
    return {
      solids: [{ ...solid, count: used.length }],
      findings: labelFindings(id, [shape.size], room, `${shape.kind} ${shape.size}`),
    };
  },
});

/** Left between letters and the edge of a face, mm. Common practice. */
const beside = 0.5;

/** In the middle of a round face: one line of letters. */
export function faceRoom(radius: number): LabelRoom {
  const free = Math.max(0, radius - beside);
  return roomInRound(free, lineOn(free));
}

/** The same in a hexagon with a corner on +x, about a circle of this radius: wider, between two of its corners. */
export function hexagonRoom(radius: number): LabelRoom {
  const free = Math.max(0, radius - beside);
  const height = lineOn(free);
  return { x: 0, y: 0, width: free * 2 * cornerShare - height / Math.sqrt(3), height };
}

const lineOn = (free: number): number => Math.min(2 * free, Math.max(leastLetters + labelStroke, 0.8 * free));

/** The shapes of all bosses that are loose bodies, in the plan's order. */
export function bossKinds({ process, bosses: all }: Mold): BossKind[] {
  const loose = all.filter((boss) => isLoose(boss, process));
  const groups = new Map<string, Boss[]>();
  for (const boss of loose) {
    const { kind, size, acrossFlats, rootDepth, headRadius, headHeight, headDraftRad } = boss;
    const key = JSON.stringify([kind, size, acrossFlats, rootDepth, headRadius, headHeight, headDraftRad]);
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
    };
  });
}
