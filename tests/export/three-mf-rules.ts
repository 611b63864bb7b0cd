import { strFromU8, unzipSync } from 'fflate';
import { SaxesParser } from 'saxes';

/** What a 3MF says of itself, and where it breaks the rules of the 3MF Core Specification (chapters 3 to 5). */
export interface Facts3mf {
  readonly faults: readonly string[];
  readonly unit: string;
  /** Of each object, by pid and pindex. */
  readonly colors: readonly string[];
  readonly volumes: readonly number[];
}

interface Parts {
  unit: string;
  objects: { id: number; pid: string; pindex: string; p: number[]; t: number[] }[];
  bases: Map<string, string[]>;
  items: { object: number; transform: number[] }[];
  faults: string[];
}

/** Which element may stand in which, in the schema's order. */
const children: Record<string, readonly string[]> = {
  '': ['model'],
  model: ['metadata', 'resources', 'build'],
  resources: ['basematerials', 'object'],
  basematerials: ['base'],
  object: ['mesh'],
  mesh: ['vertices', 'triangles'],
  vertices: ['vertex'],
  triangles: ['triangle'],
  build: ['item'],
};

/** ST_Number of the schema. */
const number = /^[-+]?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][-+]?[0-9]+)?$/;

/** Reads the package with a zip and an XML reader that are not ours. `edit` may spoil the model's text first. */
export function facts3mf(bytes: Uint8Array, edit = (text: string): string => text): Facts3mf {
  const files = unzipSync(bytes);
  const parts = readModel(edit(strFromU8(files['3D/3dmodel.model'])));
  const known = new Set(parts.objects.map(({ id }) => id));
  const faults = [
    ...parts.faults,
    ...parts.items.flatMap(({ object, transform: m }, i) => [
      ...(known.has(object) ? [] : [`item ${i}: no object ${object}`]),
      ...(turnOf(m) > 0 ? [] : [`item ${i}: the transform mirrors or flattens`]),
    ]),
    ...parts.objects.flatMap(({ id, p, t }) => faultsOfMesh(p, t).map((fault) => `object ${id}: ${fault}`)),
  ];
  return {
    faults,
    unit: parts.unit,
    colors: parts.objects.map(({ pid, pindex }) => parts.bases.get(pid)?.[Number(pindex)] ?? ''),
    volumes: parts.objects.map(({ p, t }) => volumeOf(p, t)),
  };
}

function readModel(text: string): Parts {
  const parts: Parts = { unit: '', objects: [], bases: new Map(), items: [], faults: [] };
  const path: { name: string; last: number }[] = [{ name: '', last: 0 }];
  const parser = new SaxesParser();
  const numberOf = (value: string): number => {
    if (!number.test(value)) parts.faults.push(`"${value}" is no number of the schema`);
    return Number(value);
  };
  parser.on('opentag', ({ name, attributes }) => {
    const a = attributes as Record<string, string>;
    const parent = path[path.length - 1];
    const order = (children[parent.name] ?? []).indexOf(name);
    if (order < parent.last) parts.faults.push(`<${name}> in <${parent.name}> is out of place`);
    parent.last = order;
    path.push({ name, last: 0 });
    const object = parts.objects.at(-1);
    if (name === 'model') parts.unit = a.unit;
    if (name === 'basematerials') parts.bases.set(a.id, []);
    if (name === 'base') [...parts.bases.values()].at(-1)?.push(a.displaycolor);
    if (name === 'object')
      parts.objects.push({ id: Number(a.id), pid: a.pid, pindex: a.pindex, p: [], t: [] });
    if (name === 'vertex') object?.p.push(numberOf(a.x), numberOf(a.y), numberOf(a.z));
    if (name === 'triangle') object?.t.push(Number(a.v1), Number(a.v2), Number(a.v3));
    if (name === 'item')
      parts.items.push({ object: Number(a.objectid), transform: a.transform.split(' ').map(numberOf) });
  });
  parser.on('closetag', () => path.pop());
  parser.write(text).close();
  return parts;
}

/** Determinant of m00 ... m22; NaN where there are not twelve numbers. */
const turnOf = (m: readonly number[]): number =>
  m.length === 12
    ? m[0] * (m[4] * m[8] - m[5] * m[7]) -
      m[1] * (m[3] * m[8] - m[5] * m[6]) +
      m[2] * (m[3] * m[7] - m[4] * m[6])
    : Number.NaN;

function faultsOfMesh(p: readonly number[], t: readonly number[]): string[] {
  const ways = new Map<string, number>();
  let repeated = 0;
  for (let i = 0; i < t.length; i += 3) {
    const face = t.slice(i, i + 3);
    if (new Set(face).size < 3 || face.some((vertex) => !(vertex >= 0 && vertex < p.length / 3))) repeated++;
    for (const [k, from] of face.entries()) {
      const edge = `${from} ${face[(k + 1) % 3]}`;
      ways.set(edge, (ways.get(edge) ?? 0) + 1);
    }
  }
  // Exactly two faces that run along the edge opposite ways: each way once, and its opposite once.
  const alone = [...ways].filter(([edge, count]) => {
    const [from, to] = edge.split(' ');
    return count !== 1 || ways.get(`${to} ${from}`) !== 1;
  });
  const volume = volumeOf(p, t);
  return [
    ...(t.length / 3 < 4 ? ['fewer than four faces'] : []),
    ...(repeated > 0 ? [`${repeated} faces with a repeated or missing vertex`] : []),
    ...(alone.length > 0 ? [`${alone.length} edges without exactly two faces`] : []),
    ...(volume > 0 ? [] : [`volume ${volume}`]),
  ];
}

function volumeOf(p: readonly number[], t: readonly number[]): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [t[i] * 3, t[i + 1] * 3, t[i + 2] * 3];
    six += p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]);
    six += p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]);
    six += p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}
