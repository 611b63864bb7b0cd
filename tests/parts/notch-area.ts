/**
 * A V with its mouth on a chord of the rim and a round root of a quarter of its depth, tangent to both flanks, mm2.
 * The hull of a circle and the two ends of the mouth, from plain trigonometry: tangents from an outside point are
 * as long as sqrt(d^2 - r^2) and turn from the line to the middle by acos(r / d).
 */
export function notchArea(
  { width, depth }: { readonly width: number; readonly depth: number },
  radius: number,
): number {
  const deep = Math.sqrt(radius ** 2 - (width / 2) ** 2) - (radius - depth);
  const r = Math.min(deep / 4, width / 2);
  const far = Math.hypot(deep - r, width / 2);
  const tangent = Math.sqrt(far ** 2 - r ** 2);
  const round = Math.PI - Math.atan2(width / 2, deep - r) - Math.acos(r / far);
  return r * tangent + (width / 2) * (deep - r) + round * r ** 2;
}

/**
 * Area times distance from the axis, mm3, of the same shape summed over strips: the root's circle as far as it is
 * wider than the line from the mouth's end that just touches it, found by trying slopes.
 */
export function notchMoment(width: number, depth: number, radius: number): number {
  const outer = Math.sqrt(radius ** 2 - (width / 2) ** 2);
  const tip = radius - depth;
  const r = Math.min((outer - tip) / 4, width / 2);
  // Half width at x of a line through the mouth's end with this slope; it touches where its distance from the middle is r.
  const distance = (slope: number): number =>
    Math.abs(width / 2 - slope * (outer - tip - r)) / Math.hypot(1, slope);
  let [flat, steep] = [0, width / 2 / (outer - tip - r)];
  for (let i = 0; i < 60; i++) {
    const slope = (flat + steep) / 2;
    if (distance(slope) > r) flat = slope;
    else steep = slope;
  }
  const touch = tip + r - r * (flat / Math.hypot(1, flat));
  const steps = 20_000;
  const dx = (outer - tip) / steps;
  let moment = 0;
  for (let i = 0; i < steps; i++) {
    const x = tip + (i + 0.5) * dx;
    const half = x < touch ? Math.sqrt(r ** 2 - (x - tip - r) ** 2) : width / 2 - flat * (outer - x);
    moment += 2 * half * x * dx;
  }
  return moment;
}
