/** Most points of all paths of a drawing as they are read, curves as chords; each of two lines that meet has its own. */
const mostPoints = 20_000;

/**
 * Most corners of all outlines made of them. A palm-sized part drawn to 0.01 mm has some hundred; what is done with
 * them (crossings, which ring is in which, cutting into triangles) takes at worst a step for each pair.
 */
const mostCorners = 10_000;

/** Ends the reading of a drawing with more points; caught where the reading was started. */
export class TooManyPoints extends Error {
  constructor(
    readonly what: 'points' | 'corners',
    readonly limit: number,
  ) {
    super(`more than ${limit} ${what}`);
  }
}

export function limitPoints(count: number): void {
  if (count > mostPoints) throw new TooManyPoints('points', mostPoints);
}

export function limitCorners(count: number): void {
  if (count > mostCorners) throw new TooManyPoints('corners', mostCorners);
}
