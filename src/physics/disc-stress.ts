/** A flat disc of even thickness turning about its axis. Radii mm; `bore` 0 for a solid disc. */
export interface TurningDisc {
  readonly radius: number;
  readonly bore: number;
  readonly densityKgM3: number;
  readonly poisson: number;
}

/** Stresses in Pa. */
export interface DiscStress {
  /** Along the hoop at the bore, or at the center of a solid disc: the greatest of all. */
  readonly greatest: number;
  /** Greatest stress along the radius. */
  readonly radial: number;
  /** Radius in mm at which that is. */
  readonly radialAt: number;
  /** Along the hoop at the rim. */
  readonly rim: number;
}

/**
 * Elastic stress in a turning disc. With a bore: hoop stress at the bore
 * (3 + nu) / 4 rho omega^2 [r_o^2 + (1 - nu) / (3 + nu) r_i^2]; radial stress (3 + nu) / 8 rho omega^2 (r_o - r_i)^2
 * at sqrt(r_i r_o); hoop stress at the rim rho omega^2 / 4 [(1 - nu) r_o^2 + (3 + nu) r_i^2]. Solid: both stresses
 * are (3 + nu) / 8 rho omega^2 r_o^2 at the center (Timoshenko, Strength of Materials II; Roark, ch. 16; Shigley 3-15).
 */
export function discStress(
  { radius, bore, densityKgM3, poisson }: TurningDisc,
  speedRpm: number,
): DiscStress {
  if (!(radius > bore && bore >= 0)) throw new RangeError(`discStress: a bore of ${bore} in ${radius} mm`);
  const omega = (speedRpm * Math.PI) / 30;
  const load = densityKgM3 * omega ** 2 * 1e-6;
  const [outer, inner] = [radius ** 2, bore ** 2];
  const rim = (load / 4) * ((1 - poisson) * outer + (3 + poisson) * inner);
  if (bore === 0) {
    const center = ((3 + poisson) / 8) * load * outer;
    return { greatest: center, radial: center, radialAt: 0, rim };
  }
  return {
    greatest: (load / 4) * ((3 + poisson) * outer + (1 - poisson) * inner),
    radial: ((3 + poisson) / 8) * load * (radius - bore) ** 2,
    radialAt: Math.sqrt(bore * radius),
    rim,
  };
}

/** The speed at which a stress that grows with its square reaches the strength. */
export const burstSpeed = (speedRpm: number, stressPa: number, strengthPa: number): number =>
  speedRpm * Math.sqrt(strengthPa / stressPa);
