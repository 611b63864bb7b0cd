import type { SaxesTagNS } from 'saxes';
import type { CodeValues } from '../../findings/index.ts';
import { determinant, identity, type Matrix4 } from '../../geometry/index.ts';
import type { FileUnit } from '../raw.ts';
import { type GrowableArray, growableFloats, growableIndices } from './growable-array.ts';
import { type MeshFile, mostFilePoints, mostFileTriangles } from './mesh-file.ts';
import type { PackageFaults } from './package-faults.ts';
import { readXmlPart, type XmlPlace } from './package-xml.ts';
import { ResourceIds } from './resource-ids.ts';
import type { ZipParts } from './zip-parts.ts';

const core = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const production = 'http://schemas.microsoft.com/3dmanufacturing/production/2015/06';
const secure = 'http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04';
/** Extensions that leave the shape as the core says, or whose part in it is read (objects in other parts). */
const understood = new Set([
  core,
  production,
  'http://schemas.microsoft.com/3dmanufacturing/material/2015/02',
]);

/** Names of metadata told apart. */
const mostNames = 10_000;
const longestName = 1000;

const objectTypes = new Set(['model', 'solidsupport', 'support', 'surface', 'other']);

const units: Readonly<Record<string, FileUnit>> = {
  micron: 'micron',
  millimeter: 'mm',
  centimeter: 'cm',
  meter: 'm',
  inch: 'in',
  foot: 'ft',
};

/** An object used in a build or in another object. */
export interface Use {
  readonly objectId: string;
  /** Part it is defined in, where that is not the part of the use. */
  readonly part?: string;
  readonly matrix: Matrix4;
}

export interface ModelObject {
  readonly type: string;
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly components: readonly Use[];
}

export interface ModelPart {
  readonly unit: FileUnit;
  readonly objects: ReadonlyMap<string, ModelObject>;
  readonly build: readonly Use[];
}

/** Reads a 3D model part (3MF core 1.4, chapters 3 and 4): objects, components, build items, unit. */
export function readModelPart(file: MeshFile, zip: ZipParts, part: string, faults: PackageFaults): ModelPart {
  const reading = new ModelReading(file, part, faults);
  readXmlPart(file, zip, part, reading);
  return reading.done();
}

type Attributes = SaxesTagNS['attributes'];
type PartFault = Extract<CodeValues<'mesh.unreadable'>['which'], `model-${string}` | `transform-${string}`>;

interface OpenObject {
  readonly id: string;
  readonly type: string;
  readonly positions: GrowableArray<Float64Array>;
  readonly triangles: GrowableArray<Uint32Array>;
  readonly components: Use[];
}

class ModelReading {
  private readonly objects = new Map<string, ModelObject>();
  private readonly build: Use[] = [];
  private unit: FileUnit = 'mm';
  /** Names of the open elements; below one that is not of the core, nothing is read. */
  private readonly path: string[] = [];
  private foreign = 0;
  /** Names of the metadata so far. */
  private readonly named = new Set<string>();
  private readonly resources: ResourceIds;
  private object: OpenObject | undefined;
  private points = 0;
  private faces = 0;

  constructor(
    private readonly file: MeshFile,
    private readonly part: string,
    private readonly faults: PackageFaults,
  ) {
    this.resources = new ResourceIds(faults);
  }

  done(): ModelPart {
    this.resources.judge();
    return { unit: this.unit, objects: this.objects, build: this.build };
  }

  open({ local, uri, attributes }: SaxesTagNS, place: XmlPlace): void {
    const { path } = this;
    if (path.length === 0) this.root(local, uri, attributes, place);
    else {
      if (this.foreign === 0 && path.at(-1) === 'resources' && attributes.id)
        this.resources.add(attributes.id.value.trim(), place.textPlace());
      if (this.foreign > 0 || uri !== core) this.foreign++;
    }
    if (this.foreign > 0) return;
    const inside = path[path.length - 1];
    path.push(local);
    if (local === 'vertex' && inside === 'vertices') this.vertex(attributes, place);
    else if (local === 'triangle' && inside === 'triangles') this.triangle(attributes, place);
    else if (local === 'metadata' && inside === 'model') this.metadata(attributes, place);
    else if (local === 'object' && inside === 'resources') this.begin(attributes, place);
    else if (local === 'component' && inside === 'components') {
      this.object?.components.push(this.use(attributes, place));
    } else if (local === 'item' && inside === 'build') this.build.push(this.use(attributes, place));
  }

  close(): void {
    if (this.foreign > 0) {
      this.foreign--;
      return;
    }
    const { object } = this;
    if (this.path.pop() !== 'object' || !object || this.path.at(-1) !== 'resources') return;
    this.objects.set(object.id, {
      type: object.type,
      positions: object.positions.done(),
      triangles: object.triangles.done(),
      components: object.components,
    });
    this.object = undefined;
  }

  private root(local: string, uri: string, attributes: Attributes, place: XmlPlace): void {
    if (local !== 'model' || uri !== core) {
      this.fault('model-root', place, local);
    }
    const unit = attributes.unit?.value ?? 'millimeter';
    if (!Object.hasOwn(units, unit)) {
      this.file.stop('mesh.unit-unknown', { text: short(unit) }, place.textPlace());
    }
    this.unit = units[unit];
    for (const prefix of (attributes.requiredextensions?.value ?? '').split(/\s+/).filter(Boolean)) {
      const extension = place.namespaceOf(prefix) ?? prefix;
      if (understood.has(extension)) continue;
      if (extension === secure) this.file.stop('mesh.encrypted', { which: 'content' }, place.textPlace());
      this.file.stop('mesh.extension-needed', { extension: short(extension, 120) }, place.textPlace());
    }
  }

  private metadata(attributes: Attributes, place: XmlPlace): void {
    const { faults, named } = this;
    const name = attributes.name?.value.trim().slice(0, longestName);
    const at = place.textPlace();
    if (name === undefined) {
      faults.say('metadata-unnamed', undefined, at);
      return;
    }
    if (named.has(name)) faults.say('metadata-twice', short(name), at);
    else if (named.size < mostNames) named.add(name);
    if (/\s/.test(name)) faults.say('metadata-spaced', short(name), at);
    const [prefix, local] = name.split(':');
    if (local !== undefined && place.namespaceOf(prefix) === undefined)
      faults.say('metadata-prefix', short(name), at);
  }

  private begin(attributes: Attributes, place: XmlPlace): void {
    const id = this.required(attributes, 'id', place);
    if (this.objects.has(id)) this.fault('model-twice', place, id);
    const type = attributes.type?.value ?? 'model';
    if (!objectTypes.has(type)) this.faults.say('object-type', short(type), place.textPlace());
    this.resources.ask(attributes.pid?.value.trim(), place.textPlace);
    this.object = {
      id,
      type,
      positions: growableFloats(),
      triangles: growableIndices(),
      components: [],
    };
  }

  private vertex(attributes: Attributes, place: XmlPlace): void {
    const positions = this.object?.positions;
    if (!positions) return;
    this.file.limit(++this.points, mostFilePoints, 'points');
    positions.push(this.number(this.required(attributes, 'x', place), place));
    positions.push(this.number(this.required(attributes, 'y', place), place));
    positions.push(this.number(this.required(attributes, 'z', place), place));
  }

  private triangle(attributes: Attributes, place: XmlPlace): void {
    const { object } = this;
    if (!object) return;
    this.file.limit(++this.faces, mostFileTriangles, 'triangles');
    this.resources.ask(attributes.pid?.value.trim(), place.textPlace);
    const points = object.positions.length / 3;
    for (const corner of ['v1', 'v2', 'v3']) {
      const text = this.required(attributes, corner, place);
      if (!/^\s*\d{1,10}\s*$/.test(text)) this.fault('model-point', place, text);
      const point = Number(text);
      if (point >= points)
        this.file.stop('mesh.bad-index', { which: 'object', point, points }, place.textPlace());
      object.triangles.push(point);
    }
  }

  private use(attributes: Attributes, place: XmlPlace): Use {
    const objectId = this.required(attributes, 'objectid', place);
    const elsewhere = Object.values(attributes).find(
      ({ uri, local }) => uri === production && local === 'path',
    );
    return {
      objectId,
      matrix: this.matrix(attributes.transform?.value, place),
      ...(elsewhere && { part: elsewhere.value }),
    };
  }

  /** "m00 m01 m02 m10 ... m32": rows of a 4 x 3 matrix that points, as rows, are multiplied by from the left. */
  private matrix(text: string | undefined, place: XmlPlace): Matrix4 {
    if (text === undefined) return identity;
    const m = text
      .trim()
      .split(/\s+/, 13)
      .map((word) => this.number(word, place));
    if (m.length !== 12) this.fault(m.length > 12 ? 'transform-long' : 'transform-short', place);
    // The transpose, for points as columns, stored column by column, has the same order.
    const matrix = [0, 3, 6, 9].flatMap((row) => [m[row], m[row + 1], m[row + 2], row === 9 ? 1 : 0]);
    if (!(Math.abs(determinant(matrix)) > 0)) this.fault('transform-flat', place);
    return matrix;
  }

  private number(text: string, place: XmlPlace): number {
    const value = Number(text);
    if (Number.isFinite(value) && /^\s*[-+\d.][-+\d.eE]*\s*$/.test(text)) return value;
    if (/^\s*[-+]?\d*,\d+/.test(text))
      return this.file.stop('mesh.decimal-comma', { text: short(text) }, place.textPlace());
    return this.fault('model-number', place, text);
  }

  private required(attributes: Attributes, name: string, place: XmlPlace): string {
    const attribute = attributes[name];
    return attribute ? attribute.value : this.fault('model-lacks', place, name);
  }

  /** Ends the reading; `text` is the piece of the part that is at fault. */
  private fault(which: PartFault, place: XmlPlace, text?: string): never {
    const said = { which, part: this.part, ...(text !== undefined && { text: short(text) }) };
    return this.file.stop('mesh.unreadable', said, place.textPlace());
  }
}

/** A piece of the file for a message: without control characters, and not too long. */
const short = (text: string, most = 40): string => {
  const shown = text.slice(0, most).replace(/\p{C}/gu, '\ufffd');
  return text.length > most ? `${shown}...` : shown;
};
