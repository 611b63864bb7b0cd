/** A closed bumpy lentil as binary STL: 2 * around * (rings - 1) triangles about the z axis, `radius` wide, mm. */
export function bumpyMesh(around: number, rings: number, radius: number): Uint8Array {
  const point = (ring: number, step: number): [number, number, number] => {
    const down = (Math.PI * ring) / rings;
    const turn = (2 * Math.PI * (step % around)) / around;
    const bump =
      1 + 0.06 * Math.sin(5 * turn) * Math.sin(3 * down) + 0.01 * Math.sin(23 * turn) * Math.sin(down);
    const wide = ring === 0 || ring === rings ? 0 : radius * bump * Math.sin(down);
    return [wide * Math.cos(turn), wide * Math.sin(turn), 0.45 * radius * Math.cos(down)];
  };
  const faces: [number, number, number][][] = [];
  for (let ring = 0; ring < rings; ring++) {
    for (let step = 0; step < around; step++) {
      const [a, b] = [point(ring, step), point(ring, step + 1)];
      const [c, d] = [point(ring + 1, step), point(ring + 1, step + 1)];
      if (ring > 0) faces.push([a, c, b]);
      if (ring < rings - 1) faces.push([b, c, d]);
    }
  }
  const view = new DataView(new ArrayBuffer(84 + faces.length * 50));
  view.setUint32(80, faces.length, true);
  for (const [i, face] of faces.entries()) {
    for (const [k, value] of face.flat().entries()) view.setFloat32(84 + i * 50 + 12 + k * 4, value, true);
  }
  return new Uint8Array(view.buffer);
}

/** Thirty-six placements of a master of 70 000 triangles, close together: what moving by hand is held to. */
export const manyPlan = `process: rubber
disc: { diameter: 300, thickness: 18 }
sprue: {}
parting: { surface: flat }
masters:
  leaf: { file: leaf.stl, unit: mm }
placements:
  - { master: leaf, ring: { count: 22, radius: 118 }, sink: 3 }
  - { master: leaf, ring: { count: 14, radius: 76 }, sink: 3 }
`;
export const manyMesh = (): Uint8Array => bumpyMesh(188, 187, 7);
