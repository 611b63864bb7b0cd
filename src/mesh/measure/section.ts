import type { Point2 } from '../../geometry/index.ts';
import type { MeshData } from './measure.ts';

/**
 * Section of a closed mesh (mm, faces counter-clockwise from outside) by the plane z = 0 as closed rings with material
 * on their left, in the order of the faces. A corner in the plane itself counts as over it, so that rings close
 * whatever lies there. Shells that overlap give rings that cross. Empty where the mesh does not reach the plane.
 */
export function sectionOf({ positions: p, triangles }: MeshData): Point2[][] {
  const vertices = p.length / 3;
  // By the edge a ring comes over: where it crosses that, and the edge it goes on to.
  const steps = new Map<number, { readonly at: Point2; readonly next: number }>();
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const [aOver, bOver, cOver] = [p[a * 3 + 2] >= 0, p[b * 3 + 2] >= 0, p[c * 3 + 2] >= 0];
    if (aOver === bOver && bOver === cOver) continue;
    // The corner that is alone on its side, and the two others in their order round the face.
    const [one, second, third] = bOver === cOver ? [a, b, c] : cOver === aOver ? [b, c, a] : [c, a, b];
    const [to, from] = p[one * 3 + 2] >= 0 ? [third, second] : [second, third];
    steps.set(edge(one, from, vertices), { at: crossing(p, one, from), next: edge(one, to, vertices) });
  }
  return rings(steps);
}

const edge = (a: number, b: number, vertices: number): number => Math.min(a, b) * vertices + Math.max(a, b);

/** Where an edge meets the plane, found from its lower number to its higher whichever face asks. */
function crossing(p: ArrayLike<number>, one: number, other: number): Point2 {
  const [a, b] = [Math.min(one, other) * 3, Math.max(one, other) * 3];
  const t = p[a + 2] / (p[a + 2] - p[b + 2]);
  return [p[a] + t * (p[b] - p[a]), p[a + 1] + t * (p[b + 1] - p[a + 1])];
}

function rings(steps: Map<number, { readonly at: Point2; readonly next: number }>): Point2[][] {
  const found: Point2[][] = [];
  for (const first of [...steps.keys()]) {
    const ring: Point2[] = [];
    for (let key = first, step = steps.get(key); step; key = step.next, step = steps.get(key)) {
      ring.push(step.at);
      steps.delete(key);
    }
    if (ring.length > 2) found.push(ring);
  }
  return found;
}
