/** A piece of a shape: how much it holds, mm3, and its centroid, mold frame. */
export interface Lump {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Area between a line at `from` from the axis and the rim, over a width across the radius. */
export const bandBeyond = (radius: number, width: number, from: number): number =>
  (width / 2) * Math.sqrt(radius ** 2 - (width / 2) ** 2) +
  radius ** 2 * Math.asin(width / 2 / radius) -
  from * width;

export const polar = (radius: number, angleRad: number): { readonly x: number; readonly y: number } => ({
  x: radius * Math.cos(angleRad),
  y: radius * Math.sin(angleRad),
});
