import type { TriangleMesh } from '../../geometry/index.ts';

/** Most faces made by splitting; beyond it the rest stays long. */
const mostFaces = 3_000_000;

/**
 * The same surface as a soup of faces with no side longer than `longest` mm: each longer side is halved. A fan of
 * long needles cannot be sorted by place; its pieces can.
 */
export function splitLong({ positions, triangles }: TriangleMesh, longest: number): TriangleMesh {
  const out: number[] = [];
  const open: number[][] = [];
  for (let h = 0; h < triangles.length; h += 3) {
    open.push(
      [0, 1, 2].flatMap((k) => [...positions.subarray(triangles[h + k] * 3, triangles[h + k] * 3 + 3)]),
    );
    for (let face = open.pop(); face; face = open.pop()) {
      const k = out.length / 9 < mostFaces ? longSide(face, longest) : undefined;
      if (k === undefined) out.push(...face);
      else open.push(...halves(face, k));
    }
  }
  return {
    positions: Float32Array.from(out),
    triangles: Uint32Array.from({ length: out.length / 3 }, (_, i) => i),
  };
}

/** The corner at which the longest side begins, if that is too long. */
function longSide(face: readonly number[], longest: number): number | undefined {
  let most = longest;
  let side: number | undefined;
  for (let k = 0; k < 3; k++) {
    const a = k * 3;
    const b = ((k + 1) % 3) * 3;
    const length = Math.hypot(face[a] - face[b], face[a + 1] - face[b + 1], face[a + 2] - face[b + 2]);
    if (length <= most) continue;
    most = length;
    side = k;
  }
  return side;
}

function halves(face: readonly number[], k: number): [number[], number[]] {
  const corner = (n: number): number[] => face.slice((n % 3) * 3, (n % 3) * 3 + 3);
  const [a, b, c] = [corner(k), corner(k + 1), corner(k + 2)];
  const middle = a.map((value, axis) => (value + b[axis]) / 2);
  return [
    [...a, ...middle, ...c],
    [...middle, ...b, ...c],
  ];
}
