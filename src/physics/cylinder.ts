/** A long round tube under pressure from within. Radii in mm. */
export interface Tube {
  readonly inner: number;
  readonly outer: number;
}

/**
 * Greatest stress along the hoop, at the bore, in Pa: p (r_o^2 + r_i^2) / (r_o^2 - r_i^2) (Lame; Timoshenko, Strength
 * of Materials II; Shigley 3-14).
 */
export const hoopStress = (pressurePa: number, { inner, outer }: Tube): number =>
  (pressurePa * (outer ** 2 + inner ** 2)) / (outer ** 2 - inner ** 2);

/** What yielding goes by in a ductile wall: stress along the hoop less that across the wall, which is -p at the bore (Tresca). */
export const wallStress = (pressurePa: number, tube: Tube): number =>
  hoopStress(pressurePa, tube) + pressurePa;
