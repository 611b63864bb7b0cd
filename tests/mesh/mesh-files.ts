import { strToU8, zipSync } from 'fflate';
import { type ReadOutcome, readMesh } from '../../src/mesh/index.ts';

/** Files written by hand for the readers' tests; nothing of the project writes here. */
type Corner = readonly [number, number, number];
export type Face = readonly [Corner, Corner, Corner];

const [o, x, y, z]: Corner[] = [
  [0, 0, 0],
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
/** A corner of a cube cut off: four faces, outward, volume 1/6. */
export const tetrahedron: readonly Face[] = [
  [o, y, x],
  [o, x, z],
  [o, z, y],
  [x, y, z],
];

/** 84 + 50 n bytes, little-endian, normals zero; `count` and `header` may lie. */
export function binaryStl(
  faces: readonly Face[],
  { header = '', count = faces.length }: { header?: string; count?: number } = {},
): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * faces.length);
  bytes.set(new TextEncoder().encode(header).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (const [f, face] of faces.entries()) {
    for (const [i, value] of face.flat().entries()) view.setFloat32(84 + 50 * f + 12 + 4 * i, value, true);
  }
  return bytes;
}

export function asciiStl(faces: readonly Face[], name = 'leaf', newline = '\n'): string {
  const lines = faces.flatMap((face) => [
    '  facet normal 0 0 0',
    '    outer loop',
    ...face.map((corner) => `      vertex ${corner.join(' ')}`),
    '    endloop',
    '  endfacet',
  ]);
  return [`solid ${name}`, ...lines, `endsolid ${name}`, ''].join(newline);
}

export const tetrahedronObj = 'v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n';

const startType = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
export const coreNamespace = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';

export const relations = (target = '/3D/3dmodel.model', type = startType): string =>
  `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="${target}" Id="r" Type="${type}"/></Relationships>`;

export const meshXml =
  '<mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="1" y="0" z="0"/><vertex x="0" y="1" z="0"/><vertex x="0" y="0" z="1"/></vertices>' +
  '<triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles></mesh>';

export const modelXml = (resources: string, build: string, head = 'unit="millimeter"'): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<model ${head} xmlns="${coreNamespace}">\n<resources>${resources}</resources>\n<build>${build}</build>\n</model>`;

/** A package of a model part and the relationships that lead to it; `parts` adds to or replaces them. */
export const package3mf = (
  model: string | Uint8Array,
  parts: Readonly<Record<string, string | Uint8Array>> = {},
): Uint8Array => {
  const all = { '_rels/.rels': relations(), '3D/3dmodel.model': model, ...parts };
  const files = Object.entries(all).map(([name, part]) => [
    name,
    typeof part === 'string' ? strToU8(part) : part,
  ]);
  return zipSync(Object.fromEntries(files) as Record<string, Uint8Array>, { level: 6, mtime: '1980-01-02' });
};

export const read = (content: string | Uint8Array, name: string): ReadOutcome =>
  readMesh(typeof content === 'string' ? new TextEncoder().encode(content) : content, name);

export const codesOf = ({ findings }: ReadOutcome): string[] => findings.map(({ code }) => code);

/** Volume by the divergence theorem, mesh's own unit cubed. */
export function volumeOf({ mesh }: ReadOutcome): number {
  if (!mesh) return Number.NaN;
  const { positions: p, triangles: t } = mesh;
  let sixfold = 0;
  for (let h = 0; h < t.length; h += 3) {
    const [a, b, c] = [t[h] * 3, t[h + 1] * 3, t[h + 2] * 3];
    sixfold += p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]);
    sixfold += p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]);
    sixfold += p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return sixfold / 6;
}

export const facesOf = ({ mesh }: ReadOutcome): number => (mesh ? mesh.triangles.length / 3 : 0);

/** The points of that tetrahedron as OBJ, its faces, and both with other corners in the faces. */
export const objPoints = tetrahedronObj.slice(0, tetrahedronObj.indexOf('f'));
export const objFaces = tetrahedronObj.slice(objPoints.length);
export const withFaces = (line: (corner: string) => string): string =>
  objPoints + objFaces.replaceAll(/\d/g, line);
