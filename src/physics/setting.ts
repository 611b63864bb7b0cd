/** Metal that is poured and sets: all that its heat depends on. Temperatures in C. */
export interface Freezing {
  readonly densityKgM3: number;
  readonly latentJKg: number;
  readonly moltenJKgK: number;
  readonly solidJKgK: number;
  /** Of the solid metal. */
  readonly conductivityWMK: number;
  readonly solidusC: number;
  readonly liquidusC: number;
  readonly pourC: number;
}

/** What it is poured against: halves so thick that the heat does not reach through them before it has set. */
export interface Chill {
  readonly effusivity: number;
  readonly temperatureC: number;
  /** Heat transfer between metal and half, W/m2K; left out, they touch perfectly. */
  readonly contactWM2K?: number;
}

/** Thermal effusivity sqrt(k rho c), J/(m2 K s^1/2), from conductivity and diffusivity k / (rho c). */
export const effusivityOf = (conductivityWMK: number, diffusivityM2S: number): number =>
  conductivityWMK / Math.sqrt(diffusivityM2S);

/** Heat to be drawn from a kilogram of molten metal until it is wholly set, J/kg: superheat, freezing range, latent heat. */
export const heatToSet = ({ latentJKg, moltenJKgK, solidJKgK, solidusC, liquidusC, pourC }: Freezing) =>
  moltenJKgK * Math.max(0, pourC - liquidusC) + latentJKg + solidJKgK * (liquidusC - solidusC);

const metersPerMm = 1e-3;

/**
 * Time in s until heat J/m3 is drawn into a half through a face held at `faceC`, from metal of modulus V / A (mm): the
 * semi-infinite solid takes 2 e (T - T0) sqrt(t / pi), so t = pi / 4 (H (V / A) / (e (T - T0)))^2. Chvorinov's rule with
 * its constant worked out (Flemings, Solidification Processing; Poirier and Geiger, Transport Phenomena in Materials
 * Processing, ch. 10). All that resists is the half.
 */
function drawingTime(
  heatJM3: number,
  modulusMm: number,
  faceC: number,
  { effusivity, temperatureC }: Chill,
): number {
  const lead = faceC - temperatureC;
  if (lead <= 0) return Number.POSITIVE_INFINITY;
  return (Math.PI / 4) * ((heatJM3 * modulusMm * metersPerMm) / (effusivity * lead)) ** 2;
}

/** The temperature of the half (C) at which that takes `time` s: the same solved for it. */
export const halfForTime = (
  heatJM3: number,
  modulusMm: number,
  faceC: number,
  effusivity: number,
  time: number,
): number => faceC - ((heatJM3 * modulusMm * metersPerMm) / effusivity) * Math.sqrt(Math.PI / (4 * time));

/** Chvorinov's rule for metal of modulus V / A (mm), s. */
export const chvorinovTime = (metal: Freezing, modulusMm: number, half: Chill): number =>
  drawingTime(metal.densityKgM3 * heatToSet(metal), modulusMm, metal.solidusC, half);

/** The error function by its series; for the arguments met here, under 3, to rounding. */
function erf(x: number): number {
  let [term, sum] = [x, x];
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

/**
 * The constant of a front of set metal, x = 2 lambda sqrt(a t), that grows on a half with its own temperature:
 * sqrt(pi) lambda e^(lambda^2) (e_metal / e_half + erf lambda) = c (Ts - T0) / H, exact for a plane front (Carslaw and
 * Jaeger, Conduction of Heat in Solids, sec. 11.2; with a perfect half it is Neumann's). Found by halving.
 */
export function frontConstant(stefan: number, effusivityRatio: number): number {
  let [low, high] = [0, 3];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    const left = Math.sqrt(Math.PI) * middle * Math.exp(middle ** 2) * (effusivityRatio + erf(middle));
    if (left < stefan) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Time in s until a plate set from both faces is solid in its middle, `half` mm from them. Superheat and freezing range are counted as latent
 * heat, set at the solidus. What an imperfect contact holds up is added as if it were all that resists: the sum is never
 * too short.
 */
export function settingTime(metal: Freezing, halfMm: number, half: Chill): number {
  const lead = metal.solidusC - half.temperatureC;
  if (lead <= 0) return Number.POSITIVE_INFINITY;
  const { densityKgM3, solidJKgK, conductivityWMK } = metal;
  const capacity = densityKgM3 * solidJKgK;
  const heat = heatToSet(metal);
  const ratio = Math.sqrt(conductivityWMK * capacity) / half.effusivity;
  const lambda = frontConstant((solidJKgK * lead) / heat, ratio);
  const meters = halfMm * metersPerMm;
  const conducted = (meters / (2 * lambda)) ** 2 / (conductivityWMK / capacity);
  const held = half.contactWM2K === undefined ? 0 : (densityKgM3 * heat * meters) / (half.contactWM2K * lead);
  return conducted + held;
}
