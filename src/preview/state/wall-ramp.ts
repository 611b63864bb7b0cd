// Colors for a distance: a straight line through CIELAB (CIE 15:2018, sec. 8.2; D65 white of IEC 61966-2-1) from dark
// blue to light yellow. Steps of the same length are the same color difference Delta E*ab everywhere, lightness rises all
// the way, and blue against yellow is what people with the common kinds of color blindness keep.

type Triple = readonly [number, number, number];

/** Ends of the line: L*, a*, b*. */
const near: Triple = [20, 38, -52];
const far: Triple = [92, -10, 64];

/** XYZ of the white of sRGB (IEC 61966-2-1), Y = 1. */
const white: Triple = [0.95047, 1, 1.08883];

/** CIELAB at a share of the way, 0 to 1; beyond, the ends. */
export function labAt(share: number): Triple {
  const t = Math.min(1, Math.max(0, share));
  return [0, 1, 2].map((i) => near[i] + t * (far[i] - near[i])) as unknown as Triple;
}

/** Inverse of CIELAB: X / Xn = f^3 above 6/29, else 3 (6/29)^2 (f - 4/29). */
const unfold = (f: number): number => (f > 6 / 29 ? f ** 3 : 3 * (6 / 29) ** 2 * (f - 4 / 29));

/** Linear light of the sRGB primaries, 0 to 1 (matrix of IEC 61966-2-1). */
export function linearFromLab([L, a, b]: Triple): Triple {
  const fy = (L + 16) / 116;
  const x = white[0] * unfold(fy + a / 500);
  const y = white[1] * unfold(fy);
  const z = white[2] * unfold(fy - b / 200);
  return [
    3.2406 * x - 1.5372 * y - 0.4986 * z,
    -0.9689 * x + 1.8758 * y + 0.0415 * z,
    0.0557 * x - 0.204 * y + 1.057 * z,
  ];
}

/** sRGB from linear light (IEC 61966-2-1), 0 to 1. */
export const companded = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;

export const linearAt = (share: number): Triple => linearFromLab(labAt(share));

export const cssAt = (share: number): string => {
  const bytes = linearAt(share).map((light) => Math.round(255 * Math.min(1, Math.max(0, companded(light)))));
  return `rgb(${bytes.join(' ')})`;
};
