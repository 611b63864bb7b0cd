import createModule, { type ManifoldToplevel } from 'manifold-3d/manifold';
import type { TriangleMesh } from '../src/geometry/index.ts';

/** What the recipe makes: two plain discs with one master's cavities, z = 0 the parting plane. Lengths mm. */
export interface RecipeInput {
  readonly master: TriangleMesh;
  readonly places: readonly { readonly x: number; readonly y: number; readonly turnRad: number }[];
  readonly radius: number;
  readonly segments: number;
  readonly lower: number;
  readonly upper: number;
}

export const loadRecipe = async (): Promise<ManifoldToplevel> => {
  const wasm = await createModule();
  wasm.setup();
  return wasm;
};

/**
 * The quickest way known to make both halves with the kernel alone, written by hand: the master is cut at the
 * parting plane once, its pieces' meshes are turned to all places and put in one list, and each disc is cut once.
 * No guard, no label, no rounding: what the program adds on top is what the ratio shows.
 */
export function tunedHalves(wasm: ManifoldToplevel, input: RecipeInput): TriangleMesh[] {
  const { Manifold, Mesh } = wasm;
  const { master, radius, segments } = input;
  const whole = Manifold.ofMesh(
    new Mesh({ numProp: 3, vertProperties: master.positions, triVerts: master.triangles }),
  );
  const [above, below] = whole.splitByPlane([0, 0, 1], 0);
  const halves = [
    { piece: below, bottom: -input.lower, thickness: input.lower },
    { piece: above, bottom: 0, thickness: input.upper },
  ].map(({ piece, bottom, thickness }) => {
    const upright = Manifold.cylinder(thickness, radius, radius, segments);
    const disc = upright.translate(0, 0, bottom);
    const cavities = Manifold.ofMesh(new Mesh(joined(piece.getMesh(), input.places)));
    const half = disc.subtract(cavities);
    const { vertProperties, triVerts } = half.getMesh();
    for (const body of [upright, disc, cavities, half, piece]) body.delete();
    return { positions: vertProperties.slice(), triangles: triVerts.slice() };
  });
  whole.delete();
  return halves;
}

function joined(piece: InstanceType<ManifoldToplevel['Mesh']>, places: RecipeInput['places']) {
  const { numVert, vertProperties: from, triVerts } = piece;
  const vertProperties = new Float32Array(numVert * 3 * places.length);
  const joinedFaces = new Uint32Array(triVerts.length * places.length);
  for (const [k, { x, y, turnRad }] of places.entries()) {
    const c = Math.cos(turnRad);
    const s = Math.sin(turnRad);
    for (let v = 0; v < numVert; v++) {
      const to = (k * numVert + v) * 3;
      vertProperties[to] = c * from[v * 3] - s * from[v * 3 + 1] + x;
      vertProperties[to + 1] = s * from[v * 3] + c * from[v * 3 + 1] + y;
      vertProperties[to + 2] = from[v * 3 + 2];
    }
    for (let i = 0; i < triVerts.length; i++)
      joinedFaces[k * triVerts.length + i] = triVerts[i] + k * numVert;
  }
  return { numProp: 3, vertProperties, triVerts: joinedFaces };
}
