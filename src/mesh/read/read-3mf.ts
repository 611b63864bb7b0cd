import { compose, determinant, identity, type Matrix4, movePoint } from '../../geometry/index.ts';
import type { RawMesh } from '../raw.ts';
import { compactVertices } from './compact-vertices.ts';
import { Kinds } from './kinds.ts';
import type { MeshFile } from './mesh-file.ts';
import { type ModelObject, type ModelPart, readModelPart, type Use } from './model-part.ts';
import { PackageFaults } from './package-faults.ts';
import { readXmlPart } from './package-xml.ts';
import { partKey, ZipParts } from './zip-parts.ts';

const startPart = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
/** Deeper nesting of components than anybody builds by hand or program. */
const mostNesting = 100;
/** Most uses of objects in one build. */
const mostUses = 1_000_000;
const mostParts = 1000;
/**
 * Most triangles and points when all objects are placed, as many as a master may have: a few kilobytes of objects
 * made of one another twice stand for any number, and 49 million points took 1.4 GB.
 */
const mostPlacedTriangles = 4_000_000;
const mostPlacedPoints = 3 * mostPlacedTriangles;
/** Types told apart in the message on what was left out; the format has four of them. */
const mostTypes = 8;

/**
 * Reads 3MF (3MF Consortium, core specification 1.4): all build items with their components, placed by their
 * transforms, in the unit the file names. Objects not of type "model" (supports and the like) are left out, and
 * said. Objects in other parts (production extension) are followed.
 */
export function read3mf(file: MeshFile): RawMesh {
  const zip = new ZipParts(file);
  const faults = new PackageFaults(file);
  const root = startPartOf(file, zip, faults);
  return new Assembly(file, zip, root, faults).mesh();
}

function startPartOf(file: MeshFile, zip: ZipParts, faults: PackageFaults): string {
  const relations = '_rels/.rels';
  if (!zip.has(relations)) file.stop('mesh.part-missing', { which: 'relations', part: relations });
  const targets: string[] = [];
  let tickets = 0;
  readXmlPart(file, zip, relations, {
    open({ local, attributes }) {
      if (local !== 'Relationship') return;
      const [type, target] = [attributes.Type?.value ?? '', attributes.Target?.value ?? ''];
      if (type === startPart) targets.push(target);
      else if (attributes.TargetMode?.value === 'External' || /^[a-z][-+.a-z\d]*:/i.test(target))
        faults.say('outside', shown(target));
      else if (type.endsWith('/metadata/thumbnail') && !zip.has(target))
        faults.say('thumbnail', shown(target));
      if (type.endsWith('/printticket') && ++tickets === 2) faults.say('print-tickets');
    },
    close() {},
  });
  const [target] = targets;
  if (target === undefined) file.stop('mesh.part-missing', { which: 'start' });
  if (targets.length > 1) file.stop('mesh.unreadable', { which: 'starts', count: targets.length });
  return target;
}

interface Resolved {
  readonly key: string;
  readonly part: string;
  readonly object: ModelObject;
}

/** What an object comes to with all its components. */
interface Total {
  readonly triangles: number;
  readonly points: number;
  readonly uses: number;
  /** How many objects deep. */
  readonly height: number;
}

class Assembly {
  private readonly parts = new Map<string, ModelPart>();
  private readonly totals = new Map<string, Total | 'open'>();
  private readonly skipped = new Kinds(mostTypes);
  private mirrored = 0;
  private positions = new Float64Array(0);
  private triangles = new Uint32Array(0);
  private pointAt = 0;
  private cornerAt = 0;

  constructor(
    private readonly file: MeshFile,
    private readonly zip: ZipParts,
    private readonly root: string,
    private readonly faults: PackageFaults,
  ) {}

  mesh(): RawMesh {
    const { file, root } = this;
    const { unit, build } = this.part(root);
    const total = sum(build.map((use) => this.total(use, root, 0)));
    file.limit(total.triangles, mostPlacedTriangles, 'triangles');
    file.limit(total.points, mostPlacedPoints, 'points');
    if (total.uses > mostUses) file.stop('mesh.component-circle', { which: 'uses', most: mostUses });
    this.positions = new Float64Array(total.points * 3);
    this.triangles = new Uint32Array(total.triangles * 3);
    for (const use of build) {
      if (this.resolve(use, root).object.type === 'other') this.faults.say('item-other', shown(use.objectId));
    }
    for (const use of build) this.place(use, root, identity);
    this.sayWhatWasMet(build.length);
    if (total.triangles === 0)
      file.stop('mesh.no-faces', { which: build.length === 0 ? 'no-items' : 'empty-items' });
    const { mesh, left } = compactVertices({ positions: this.positions, triangles: this.triangles, unit });
    if (left > 0) file.say('mesh.skipped', { which: 'points', points: left });
    return mesh;
  }

  private sayWhatWasMet(items: number): void {
    const { file, mirrored, skipped } = this;
    if (items > 1) file.say('mesh.several-solids', { which: 'items', measured: items });
    if (mirrored > 0) file.say('mesh.mirrored', { measured: mirrored });
    if (skipped.any) file.say('mesh.skipped', { which: 'objects', ...skipped.values() });
  }

  private part(name: string): ModelPart {
    const key = partKey(name);
    const known = this.parts.get(key);
    if (known) return known;
    if (!this.zip.has(name)) this.file.stop('mesh.part-missing', { which: 'part', part: shown(name) });
    if (this.parts.size >= mostParts)
      this.file.stop('mesh.unreadable', { which: 'parts-many', count: mostParts });
    const read = readModelPart(this.file, this.zip, name, this.faults);
    this.parts.set(key, read);
    return read;
  }

  private resolve({ objectId, part: elsewhere }: Use, from: string): Resolved {
    const part = elsewhere ?? from;
    const object = this.part(part).objects.get(objectId);
    if (!object) {
      const missing = { object: shown(objectId), part: shown(part) };
      return this.file.stop('mesh.part-missing', { which: 'object', ...missing });
    }
    return { key: `${partKey(part)} ${objectId}`, part, object };
  }

  /** Counted before anything is laid out: a few nested objects can stand for any number of triangles. */
  private total(use: Use, from: string, depth: number): Total {
    const { key, part, object } = this.resolve(use, from);
    const known = this.totals.get(key);
    if (known === 'open') this.endless(use, 'itself');
    if (depth > mostNesting) this.endless(use, 'deep');
    if (known) return known;
    this.totals.set(key, 'open');
    const own = object.type === 'model' || object.components.length > 0;
    const total = sum([
      {
        triangles: own ? object.triangles.length / 3 : 0,
        points: own ? object.positions.length / 3 : 0,
        uses: 1,
        height: 0,
      },
      ...object.components.map((component) => this.total(component, part, depth + 1)),
    ]);
    // Objects counted before may have been found on a shorter way.
    if (total.height > mostNesting) this.endless(use, 'deep');
    this.totals.set(key, total);
    return total;
  }

  private endless(use: Use, which: 'itself' | 'deep'): never {
    const object = shown(use.objectId);
    return this.file.stop('mesh.component-circle', { which, object, most: mostNesting });
  }

  private place(use: Use, from: string, outer: Matrix4): void {
    const { part, object } = this.resolve(use, from);
    const matrix = compose(outer, use.matrix);
    if (object.components.length > 0) {
      // The type of an object made of components does not count; theirs does.
      for (const component of object.components) this.place(component, part, matrix);
    } else if (object.type !== 'model') {
      this.skipped.count(shown(object.type));
      return;
    }
    if (object.triangles.length > 0) this.add(object, matrix);
  }

  private add(object: ModelObject, matrix: Matrix4): void {
    const { positions, triangles, pointAt, cornerAt } = this;
    const from = object.positions;
    for (let i = 0; i < from.length; i += 3) {
      const moved = movePoint(matrix, [from[i], from[i + 1], from[i + 2]]);
      if (!moved.every(Number.isFinite)) this.file.stop('mesh.not-finite', { which: 'transforms' });
      positions.set(moved, pointAt * 3 + i);
    }
    const mirror = determinant(matrix) < 0;
    if (mirror) this.mirrored++;
    const corners = object.triangles;
    for (let h = 0; h < corners.length; h += 3) {
      triangles[cornerAt + h] = pointAt + corners[h];
      triangles[cornerAt + h + 1] = pointAt + corners[mirror ? h + 2 : h + 1];
      triangles[cornerAt + h + 2] = pointAt + corners[mirror ? h + 1 : h + 2];
    }
    this.pointAt += from.length / 3;
    this.cornerAt += corners.length;
  }
}

const sum = (totals: readonly Total[]): Total => {
  let [triangles, points, uses, height] = [0, 0, 0, 0];
  for (const total of totals) {
    triangles += total.triangles;
    points += total.points;
    uses += total.uses;
    height = Math.max(height, total.height);
  }
  return { triangles, points, uses, height: height + 1 };
};

const shown = (text: string): string => text.slice(0, 80).replace(/\p{C}/gu, '\ufffd');
