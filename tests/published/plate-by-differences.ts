/** A round plate held on its outer edge so that it can tilt, mm and MPa; `plug`: what closes the hole presses on its edge. */
export interface PressedPlate {
  readonly hole: number;
  readonly pressed: number;
  readonly radius: number;
  readonly thickness: number;
  readonly pressure: number;
  readonly modulus: number;
  readonly poisson: number;
  readonly plug: boolean;
}

/**
 * Greatest stress anywhere (MPa) and bow (mm) of a plate, from its equation (Timoshenko and Woinowsky-Krieger, Theory of
 * Plates and Shells, symmetrical bending): phi'' + phi'/r - phi/r^2 = V/D with M_r = 0 at both edges, V by equilibrium.
 * Central differences over n steps, edges by a ghost point; nothing of the program's is used.
 */
export function plateByDifferences(plate: PressedPlate, n = 6000): { stress: number; bow: number } {
  const { hole, pressed, radius, thickness, pressure, modulus, poisson: nu, plug } = plate;
  const stiffness = (modulus * thickness ** 3) / (12 * (1 - nu ** 2));
  const h = (radius - hole) / n;
  const radii = Array.from({ length: n + 1 }, (_, i) => hole + i * h);
  const held = plug ? 0 : hole ** 2;
  const shear = (r: number): number => (pressure * (Math.min(r, pressed) ** 2 - held)) / 2 / r / stiffness;
  const [up, right]: [number[], number[]] = [[], []];
  for (const [i, r] of radii.entries()) {
    // On the axis a plate without a hole does not tilt.
    let [below, on, above, load] = [
      1 / h ** 2 - 1 / (2 * h * r),
      -2 / h ** 2 - 1 / r ** 2,
      1 / h ** 2 + 1 / (2 * h * r),
      shear(r),
    ];
    if (r === 0) [below, on, above, load] = [0, 1, 0, 0];
    else if (i === 0) [on, above] = [on + (below * 2 * h * nu) / r, above + below];
    else if (i === n) [on, below] = [on - (above * 2 * h * nu) / r, below + above];
    const pivot = on - (i > 0 ? below * up[i - 1] : 0);
    up.push(above / pivot);
    right.push((load - (i > 0 ? below * right[i - 1] : 0)) / pivot);
  }
  const tilt = [...right];
  for (let i = n - 1; i >= 0; i--) tilt[i] -= up[i] * tilt[i + 1];
  const moments = radii.slice(1, n).flatMap((r, k) => {
    const bend = (tilt[k + 2] - tilt[k]) / (2 * h);
    return [bend + (nu * tilt[k + 1]) / r, tilt[k + 1] / r + nu * bend];
  });
  const edge = hole > 0 ? [(tilt[0] * (1 - nu ** 2)) / hole] : [];
  const most = Math.max(...[...moments, ...edge].map(Math.abs)) * stiffness;
  const bow = tilt.slice(1).reduce((sum, one, k) => sum + ((one + tilt[k]) / 2) * h, 0);
  return { stress: (6 * most) / thickness ** 2, bow: Math.abs(bow) };
}
