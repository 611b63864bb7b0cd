/**
 * Most points of all paths of a drawing, curves as chords. A palm-sized part drawn to 0.01 mm has some hundred; what
 * is done with them (crossings, which ring is in which) takes at worst a step for each pair.
 */
export const mostPoints = 20_000;

/** Ends the reading of a drawing with more points; caught where the reading was started. */
export class TooManyPoints extends Error {}

export function limitPoints(count: number): void {
  if (count > mostPoints) throw new TooManyPoints();
}
