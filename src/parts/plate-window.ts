import type { Profile, Scope } from '../kernel/index.ts';

/** Points of a window nearer than this to the line between their neighbors are left out, mm. */
export const drawnTo = 0.02;
/** Fingers of a plate that reach into a window break off when they are narrower than twice this. Common practice, mm. */
const fingers = 0.5;

/** A window `gap` mm wider all round than what it takes, without fingers under 1 mm: they would break off. */
export const wider = (scope: Scope, exact: Profile, gap: number): Profile =>
  scope.inset(scope.inset(exact, -gap - fingers, drawnTo), fingers, drawnTo);
