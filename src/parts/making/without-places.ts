/**
 * Leaves out where in the plan something was said: what a part is made from, and so the key its solid is cached
 * under, must not change when lines move.
 */
export function withoutPlace<T extends { readonly at?: unknown }>(thing: T): Omit<T, 'at'> {
  const { at: _, ...rest } = thing;
  return rest;
}

export const withoutPlaces = <T extends { readonly at?: unknown }>(things: readonly T[]): Omit<T, 'at'>[] =>
  things.map(withoutPlace);
