import type { Profile, Scope } from '../../kernel/index.ts';

/** Points of a window nearer than this to the line between their neighbors are left out, mm. */
export const drawnTo = 0.02;
/** Fingers of a plate that reach into a window break off where they are narrower than twice this. Common practice, mm. */
const fingers = 0.5;

/**
 * A window `gap` mm wider all round than what it takes, without fingers that are under 1 mm wide where they stand on
 * the bed, their edges chamfered: they would break off. The tips of those that stay are round.
 */
export function wider(scope: Scope, exact: Profile, gap: number, footChamfer = 0): Profile {
  const half = fingers + footChamfer;
  return scope.inset(scope.inset(exact, -gap - half, drawnTo), half, drawnTo, true);
}
