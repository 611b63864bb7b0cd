import { moveMesh, rotation, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { measureMesh } from '../mesh/index.ts';
import {
  type Channel,
  heightAt,
  type Notch,
  notchOutline,
  notchShape,
  type PartingSurface,
  type Tab,
} from '../mold/index.ts';

/** A closed mesh through convex sections with the same number of corners, capped at both ends, looking outward. */
function lofted(sections: readonly (readonly Vec3[])[]): TriangleMesh {
  const ring = sections[0].length;
  const faces: number[] = [];
  for (let section = 0; section + 1 < sections.length; section++) {
    for (let k = 0; k < ring; k++) {
      const [a, b] = [section * ring + k, section * ring + ((k + 1) % ring)];
      faces.push(a, b, a + ring, b, b + ring, a + ring);
    }
  }
  const last = (sections.length - 1) * ring;
  for (let k = 1; k + 1 < ring; k++) faces.push(0, k + 1, k, last, last + k, last + k + 1);
  const mesh = { positions: Float32Array.from(sections.flat(2)), triangles: Uint32Array.from(faces) };
  return measureMesh(mesh).volume < 0 ? { ...mesh, triangles: mesh.triangles.slice().reverse() } : mesh;
}

/**
 * A channel as the bar that holds its section, hung from the parting surface along its path: it stands out by the
 * rounding of the section, so distances from it are a hair too small and never too great.
 */
export function channelMesh(
  { from, to, width, depth, half }: Channel,
  surface: PartingSurface,
): TriangleMesh {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ax, ay] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const stations = surface.flat ? 1 : Math.max(1, Math.ceil(length / Math.max(0.5, 2 * surface.cell)));
  const down = half === 'lower' ? -depth : depth;
  const sections = Array.from({ length: stations + 1 }, (_, station) => {
    const s = (length * station) / stations;
    const edge = (side: number): readonly [Vec3, Vec3] => {
      const [x, y] = [from[0] + ax * s - ay * side, from[1] + ay * s + ax * side];
      const z = heightAt(surface, x, y);
      return [
        [x, y, z],
        [x, y, z + down],
      ];
    };
    const [right, left] = [edge(-width / 2), edge(width / 2)];
    return [right[0], left[0], left[1], right[1]];
  });
  return lofted(sections);
}

/** The box round a tab: its wedge is thinner inward. Corners of its outer face are `inset` inside the rim. */
export function tabMesh({ angleRad, width, length, height, inset }: Tab, radius: number): TriangleMesh {
  const outer = Math.sqrt(Math.max(0, (radius - inset) ** 2 - (width / 2) ** 2));
  const section = (y: number): Vec3[] => [
    [outer - length, y, -height / 2],
    [outer, y, -height / 2],
    [outer, y, height / 2],
    [outer - length, y, height / 2],
  ];
  return moveMesh(lofted([section(-width / 2), section(width / 2)]), rotation('z', angleRad));
}

/** A notch through both halves, its mouth on the rim; undefined where its width leaves no such notch. */
export function notchMesh(
  notch: Notch,
  { radius, lower, upper }: { readonly radius: number; readonly lower: number; readonly upper: number },
): TriangleMesh | undefined {
  const shape = notchShape(notch, radius);
  if (!shape) return undefined;
  const outline = notchOutline(shape);
  const section = (z: number): Vec3[] => outline.map(([x, y]) => [x, y, z]);
  return moveMesh(lofted([section(-lower), section(upper)]), rotation('z', notch.angleRad));
}
