/** A groove of rectangular section, mm. */
export interface Groove {
  readonly width: number;
  readonly depth: number;
  readonly length: number;
}

const mmPerM = 1000;

/** Share of the flow between wide plates that the side walls leave (White, Viscous Fluid Flow, sec. 3-3), flat side first. */
function sideWalls(thin: number, wide: number): number {
  let sum = 0;
  for (let n = 1; n < 40; n += 2) sum += Math.tanh((n * Math.PI * wide) / (2 * thin)) / n ** 5;
  return 1 - (192 / Math.PI ** 5) * (thin / wide) * sum;
}

/**
 * Pressure in Pa that drives `flow` mm3/s of a fluid of constant viscosity (Pa s) through a groove:
 * 12 eta L Q / (w h^3), over what the side walls leave; exact for slow flow.
 */
export function viscousPressure(
  viscosityPaS: number,
  flow: number,
  { width, depth, length }: Groove,
): number {
  const [thin, wide] = [Math.min(width, depth), Math.max(width, depth)];
  return (12 * viscosityPaS * length * flow) / (wide * thin ** 3 * sideWalls(thin, wide));
}

/** The same for a fluid that slides as a plug, held at the walls by one stress (Pa) however fast: perimeter over area. */
export const plugPressure = (stressPa: number, { width, depth, length }: Groove): number =>
  2 * stressPa * length * (1 / width + 1 / depth);

/**
 * The large rotor in its chamber, mm, two turns a minute, and 100 Mooney units of torque, 8.30 N m: ISO 289-1 (from
 * memory).
 */
const rotor = { radius: 19.05, thickness: 5.54, chamberRadius: 25.465, chamberHeight: 10.59 };
const rotorRadS = (2 * 2 * Math.PI) / 60;
const torquePerUnit = 0.083;

/** Viscosity in Pa s of what gives so many Mooney units, were it the same at every rate of shear: torque on both faces and rim. */
export function viscosityOfMooney(units: number): number {
  const { radius, thickness, chamberRadius, chamberHeight } = rotor;
  const [r, edge, outer] = [radius / mmPerM, thickness / mmPerM, chamberRadius / mmPerM];
  const gap = (chamberHeight - thickness) / 2 / mmPerM;
  const faces = (Math.PI * rotorRadS * r ** 4) / gap;
  const rim = (4 * Math.PI * rotorRadS * edge * r ** 2 * outer ** 2) / (outer ** 2 - r ** 2);
  return (torquePerUnit * units) / (faces + rim);
}

/** Stress in Pa at the walls, were it the same everywhere: the other end of how rubber may flow. */
export function stressOfMooney(units: number): number {
  const [r, edge] = [rotor.radius / mmPerM, rotor.thickness / mmPerM];
  return (torquePerUnit * units) / ((4 / 3) * Math.PI * r ** 3 + 2 * Math.PI * r ** 2 * edge);
}
