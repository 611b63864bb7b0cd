/** Greatest distance between a circle and the polygon drawn for it, in mm; small against any printing process. */
export const defaultChordError = 0.01;

/**
 * Number of straight segments for a full circle so that no chord is farther than `chordError` from the arc
 * (sagitta s = R (1 - cos(pi / n))). A multiple of 4, at least 12, so that the axes' extremes are exact vertices.
 */
export function segmentsFor(radius: number, chordError = defaultChordError): number {
  if (!(radius > 0) || !(chordError > 0))
    throw new RangeError(`segmentsFor(${radius}, ${chordError}): both must be > 0`);
  if (chordError >= radius) return 12;
  const exact = Math.PI / Math.acos(1 - chordError / radius);
  return Math.max(12, Math.ceil(exact / 4 - 1e-9) * 4);
}

/** Radius of the polygon drawn round a circle (a hole must not be too small). */
export const circumscribed = (radius: number, segments: number): number =>
  radius / Math.cos(Math.PI / segments);
