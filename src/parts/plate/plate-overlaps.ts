import type { Profile, Scope } from '../../kernel/index.ts';

/** What two outlines may share by rounding, mm2. */
const touch = 1e-3;

export interface Overlap {
  /** Places in the two lists. */
  readonly one: number;
  readonly other: number;
  /** Shared area, mm2. */
  readonly area: number;
}

/** Which of some profiles share area with one of others. */
export function overlapsBetween(
  scope: Scope,
  some: readonly Profile[],
  others: readonly Profile[],
): Overlap[] {
  const [boxes, otherBoxes] = [some, others].map((profiles) => profiles.map((profile) => profile.bounds()));
  return some.flatMap((profile, one) =>
    others.flatMap((second, other) => {
      const [a, b] = [boxes[one], otherBoxes[other]];
      const apart = [0, 1].some((axis) => a.min[axis] > b.max[axis] || b.min[axis] > a.max[axis]);
      const area = apart ? 0 : scope.commonArea(profile, second);
      return area > touch ? [{ one, other, area }] : [];
    }),
  );
}

/** Which of some profiles share area with each other, each pair once. */
export const overlapsAmong = (scope: Scope, profiles: readonly Profile[]): Overlap[] =>
  profiles.flatMap((profile, one) =>
    overlapsBetween(scope, [profile], profiles.slice(0, one)).map(({ other, area }) => ({
      one,
      other,
      area,
    })),
  );
