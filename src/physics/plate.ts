/** A round plate held at its edge so that the edge can tilt: a lid on a can. Lengths in mm, modulus in Pa. */
export interface Plate {
  /** Of the circle it is held on. */
  readonly radius: number;
  readonly thickness: number;
  readonly poisson: number;
  readonly modulusPa: number;
}

/**
 * Greatest bending stress (at the middle), Pa, under an even pressure in Pa: 3 (3 + nu) q a^2 / (8 t^2).
 * Roark's Formulas for Stress and Strain, round plates, simply supported edge, uniform load. Held to thin plates and
 * small bows; a clamped edge would be stiffer, so this is the cautious end.
 */
export const plateStress = (
  pressurePa: number,
  { radius, thickness, poisson }: Omit<Plate, 'modulusPa'>,
): number => (3 * (3 + poisson) * pressurePa * radius ** 2) / (8 * thickness ** 2);

/** Bow of the middle, mm: (5 + nu) q a^4 / (64 (1 + nu) D), D = E t^3 / (12 (1 - nu^2)). Same source. */
export function plateBow(pressurePa: number, { radius, thickness, poisson, modulusPa }: Plate): number {
  const stiffness = (modulusPa * thickness ** 3) / (12 * (1 - poisson ** 2));
  return ((5 + poisson) * pressurePa * radius ** 4) / (64 * (1 + poisson) * stiffness);
}
