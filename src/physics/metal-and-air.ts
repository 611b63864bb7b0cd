/** Standard atmosphere, Pa (ISO 2533). */
export const atmospherePa = 101_325;

/** Bond number of an opening `half` mm from its middle to its wall: rho a R^2 / gamma, a in m/s2. */
export const bondNumber = (densityKgM3: number, pull: number, half: number, tensionNM: number): number =>
  (densityKgM3 * pull * half * half * 1e-6) / tensionNM;

/** The half width (mm) at which an opening has that Bond number. */
export const halfWidthAt = (bond: number, densityKgM3: number, pull: number, tensionNM: number): number =>
  Math.sqrt((bond * tensionNM) / (densityKgM3 * pull)) * 1000;

/**
 * Speed (m/s) of a liquid out of a vessel that turns with it: Bernoulli along a stream line in the turning frame, v^2 =
 * omega^2 (r^2 - r_s^2); Torricelli's law with omega^2 r for g. `angularSpeed` in rad/s, radii of the outlet and of the
 * free surface in mm.
 */
export const outflowSpeed = (angularSpeed: number, radius: number, surfaceRadius: number): number =>
  angularSpeed * Math.sqrt(Math.max(0, radius * radius - surfaceRadius * surfaceRadius)) * 1e-3;

/** Share of the ideal flow through a sharp-edged opening that really flows (White, Fluid Mechanics; from memory). */
export const sharpEdged = 0.61;

/**
 * Greatest speed (m/s, flow over whole section) of a falling stream that lets as much air up past it: c sqrt(a D)
 * (flooding of two-phase countercurrent flow, Wallis, One-dimensional Two-phase Flow, 1969; from memory). D in mm.
 */
export const floodingSpeed = (share: number, pull: number, diameter: number): number =>
  share * Math.sqrt(pull * diameter * 1e-3);

/** Share of its volume that gas shut in at one pressure takes up under `gaugePa` more (Boyle, isothermal). */
export const boyleShare = (gaugePa: number): number => atmospherePa / (atmospherePa + gaugePa);

/** Rise of a long bubble in a tube `diameter` mm wide, m/s: 0.35 sqrt(a D) (Davies and Taylor, Proc. R. Soc. A 200, 1950). */
export const bubbleSpeed = (pull: number, diameter: number): number =>
  0.35 * Math.sqrt(pull * diameter * 1e-3);

/** The same between two walls `width` mm apart: 0.23 sqrt(a w) (plane bubble, Collins, J. Fluid Mech. 22, 1965). */
export const planeBubbleSpeed = (pull: number, width: number): number =>
  0.23 * Math.sqrt(pull * width * 1e-3);

/** Heat a metal carries and what its mold takes up. */
export interface Cooling {
  readonly densityKgM3: number;
  /** Of the liquid metal, J/(kg K). */
  readonly heatJKgK: number;
  /** How far over its liquidus it is poured, and over the mold, K. */
  readonly superheatK: number;
  readonly overMoldK: number;
  /** Conductivity (W/(m K)) and diffusivity (m2/s) of the mold. */
  readonly conductivity: number;
  readonly diffusivity: number;
}

/**
 * Time (s) in which a mold without end takes up the superheat of a section whose volume is `modulus` mm times its surface:
 * (pi / 4) (rho c dT M / (e (T - T0)))^2, e = k / sqrt(alpha) (Chvorinov's rule for the superheat alone). Grows as M^2.
 */
export function superheatTime(
  { densityKgM3, heatJKgK, superheatK, overMoldK, conductivity, diffusivity }: Cooling,
  modulus: number,
): number {
  const effusivity = conductivity / Math.sqrt(diffusivity);
  return (
    (Math.PI / 4) * ((densityKgM3 * heatJKgK * superheatK * modulus * 1e-3) / (effusivity * overMoldK)) ** 2
  );
}

/**
 * Flow (mm3/s) of gas through the gap along a parting line: gap^3 w dp / (12 mu L) between plates (Poiseuille). Lengths in
 * mm; viscosity of air at 20 C 1.8e-5 Pa s.
 */
export const leakFlow = (
  gap: number,
  along: number,
  land: number,
  pressurePa: number,
  viscosity = 1.8e-5,
): number => (gap ** 3 * along * pressurePa) / (12 * viscosity * land);
