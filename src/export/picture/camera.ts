import { cross, type Vec3 } from '../../geometry/index.ts';

/** Where a picture looks: along `direction`, with `up` upward in it (mold frame; neither need be of unit length). */
export interface View {
  readonly direction: Vec3;
  readonly up: Vec3;
}

/**
 * A parallel projection onto pixels: x to the right, y downward, depth in mm along the direction. One pixel is
 * `mmPerPixel` wide.
 */
export interface Camera {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly forward: Vec3;
  readonly mmPerPixel: number;
  /** Pixel coordinates of the frame's origin. */
  readonly originX: number;
  readonly originY: number;
  readonly width: number;
  readonly height: number;
}

/** A camera that shows all the points, with a share of the picture left empty round them. */
export function fitCamera(
  view: View,
  points: readonly Float32Array[],
  width: number,
  height: number,
  margin: number,
): Camera {
  const forward = unit(view.direction);
  const right = unit(cross(forward, view.up));
  const up = cross(right, forward);
  const [left, rightmost] = extent(points, right);
  const [lowest, highest] = extent(points, up);
  const room = 1 - 2 * margin;
  const mmPerPixel = Math.max((rightmost - left) / (width * room), (highest - lowest) / (height * room)) || 1;
  return {
    right,
    up,
    forward,
    mmPerPixel,
    originX: width / 2 - (left + rightmost) / 2 / mmPerPixel,
    originY: height / 2 + (lowest + highest) / 2 / mmPerPixel,
    width,
    height,
  };
}

export function unit(v: Vec3): Vec3 {
  const length = Math.hypot(...v);
  if (!(length > 0)) throw new RangeError('a direction without length, or an up along the direction of view');
  return [v[0] / length, v[1] / length, v[2] / length];
}

function extent(points: readonly Float32Array[], axis: Vec3): [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const p of points) {
    for (let i = 0; i < p.length; i += 3) {
      const along = p[i] * axis[0] + p[i + 1] * axis[1] + p[i + 2] * axis[2];
      if (along < least) least = along;
      if (along > greatest) greatest = along;
    }
  }
  return least <= greatest ? [least, greatest] : [0, 0];
}
