/** Torque in N m that tightens a screw (nominal diameter, mm) to a force in N: K F d, K the torque factor. */
export const tighteningTorque = (factor: number, force: number, diameter: number): number =>
  (factor * force * diameter) / 1000;

/** How far a screw may be tightened beforehand: a share of its proof load, and so that the load on top of it fits under that. */
export const preloadAllowed = (proof: number, share: number, load: number): number =>
  Math.max(0, Math.min(share * proof, proof - load));
