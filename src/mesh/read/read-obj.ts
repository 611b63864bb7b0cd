import type { Vec3 } from '../../geometry/index.ts';
import type { RawMesh } from '../raw.ts';
import { compactVertices } from './compact-vertices.ts';
import { growableFloats, growableIndices } from './growable-array.ts';
import { Kinds } from './kinds.ts';
import { type MeshFile, mostFilePoints, mostFileTriangles } from './mesh-file.ts';
import { wholeIn } from './number-text.ts';
import { TextCursor } from './text-cursor.ts';
import { quadCorner, triangulate } from './triangulate.ts';

/** Most corners one face may have: no program writes more, and cutting them up would take long. */
const mostCorners = 4000;
/** Most steps spent on cutting the hollow faces of a file: about ten seconds. */
const mostCutting = 2e9;

/**
 * Reads OBJ (Wavefront "Object Files (.obj)", Advanced Visualizer manual, appendix B1): v and f; faces name points
 * by number from 1, or backwards from -1. Texture coordinates, normals, colors, groups, materials are passed over;
 * lines, points and free-form surfaces are no faces and are said. OBJ has no unit.
 */
export function readObj(file: MeshFile): RawMesh {
  return new Obj(file).read();
}

/** Statements that say nothing about the shape; all others that are not read are counted and said. */
const plain = new Set(
  'vt vn vp g o s mg usemtl mtllib usemap maplib lod bevel c_interp d_interp shadow_obj trace_obj'.split(' '),
);
/** Kinds of statements told apart in the message. */
const mostKinds = 20;

const slash = 47;
/** The two triangles of a quadrilateral, from the corner where they meet. */
const quadCorners = [0, 1, 2, 0, 2, 3];

class Obj {
  private readonly text: TextCursor;
  private readonly positions = growableFloats();
  private readonly triangles = growableIndices();
  /** Faces with more than three corners, one after another: count, place in the file, corners. */
  private readonly polygons = growableIndices();
  private polygonCount = 0;
  private faces = 0;
  /** The largest point number met before its point, and where. */
  private ahead = -1;
  private aheadAt = 0;
  /** Where the first number stands that is not finite. */
  private brokenAt = -1;
  private readonly skipped = new Kinds(mostKinds);
  private readonly corners: number[] = [];
  private readonly quad = new Float64Array(12);

  constructor(private readonly file: MeshFile) {
    this.text = new TextCursor(file);
  }

  read(): RawMesh {
    const { text, file } = this;
    while (text.next()) {
      if (text.is('v')) this.point();
      else if (text.is('f') || text.is('fo')) this.face();
      else this.passOver();
    }
    if (this.faces === 0) {
      const points = this.positions.length / 3;
      file.stop('mesh.no-faces', { which: 'points', points: points > 0 ? points : undefined });
    }
    if (this.ahead >= this.positions.length / 3) this.noPoint(this.ahead + 1, this.aheadAt);
    this.triangulateFaces();
    return this.soundMesh();
  }

  private soundMesh(): RawMesh {
    const { file, skipped } = this;
    const positions = this.positions.done();
    const all = this.triangles.done();
    const triangles = this.brokenAt < 0 ? all : finiteFaces(positions, all);
    if (triangles.length < all.length) {
      const at = this.text.textPlace(this.brokenAt);
      const dropped = (all.length - triangles.length) / 3;
      file.notFinite(dropped, all.length / 3, { which: 'point', line: at.line }, at);
    }
    const { mesh, left } = compactVertices({ positions, triangles });
    if (skipped.any) {
      const which = left > 0 ? 'statements-and-points' : 'statements';
      file.say('mesh.skipped', { which, ...skipped.values(), ...(left > 0 && { points: left }) });
    } else if (left > 0) file.say('mesh.skipped', { which: 'points', points: left });
    return mesh;
  }

  private point(): void {
    const { text, positions } = this;
    for (let axis = 0; axis < 3; axis++) {
      text.nextInLine();
      const value = text.number('point');
      positions.push(value);
      if (this.brokenAt < 0 && !Number.isFinite(value)) this.brokenAt = text.start;
    }
    this.file.limit(positions.length / 3, mostFilePoints, 'points');
    this.passWeights();
  }

  /** A weight (w) or a color may follow: read only so that a decimal comma does not hide there. */
  private passWeights(): void {
    const { text } = this;
    for (let more = 0; text.nextInLine(); more++) {
      if (text.startsComment()) {
        text.skipLine();
        return;
      }
      text.number('point');
      if (more > 4)
        this.file.stop('mesh.unreadable', { which: 'numbers-many', statement: 'point' }, text.textPlace());
    }
  }

  private face(): void {
    const { text, file, corners } = this;
    const offset = text.start;
    corners.length = 0;
    while (text.nextInLine()) {
      if (text.startsComment()) {
        text.skipLine();
        break;
      }
      corners.push(this.corner());
      if (corners.length > mostCorners)
        file.stop('mesh.unreadable', { which: 'corners-many', count: mostCorners }, text.textPlace(offset));
    }
    if (corners.length < 3)
      file.stop('mesh.unreadable', { which: 'corners-few', count: corners.length }, text.textPlace(offset));
    this.faces += corners.length - 2;
    file.limit(this.faces, mostFileTriangles, 'triangles');
    if (corners.length === 3) {
      for (const corner of corners) this.triangles.push(corner);
      return;
    }
    this.polygonCount++;
    this.polygons.push(corners.length);
    this.polygons.push(offset);
    for (const corner of corners) this.polygons.push(corner);
  }

  /** The point a face's corner names (`v`, `v/vt`, `v//vn`, `v/vt/vn`), counted from 0. */
  private corner(): number {
    const { text, file } = this;
    let end = text.start;
    while (end < text.end && file.bytes[end] !== slash) end++;
    const number = wholeIn(file.bytes, text.start, end);
    if (number === undefined)
      return file.stop('mesh.unreadable', { which: 'point-number', text: text.quote() }, text.textPlace());
    const points = this.positions.length / 3;
    if (number === 0) file.stop('mesh.bad-index', { which: 'zero' }, text.textPlace());
    const point = number > 0 ? number - 1 : points + number;
    if (point < 0 || point >= mostFilePoints) this.noPoint(number, text.start);
    if (point >= points && point > this.ahead) {
      this.ahead = point;
      this.aheadAt = text.start;
    }
    return point;
  }

  private noPoint(number: number, offset: number): never {
    const at = this.text.textPlace(offset);
    const points = this.positions.length / 3;
    const which = number < 0 ? 'before' : 'after';
    return this.file.stop('mesh.bad-index', { which, point: number, points }, at);
  }

  private passOver(): void {
    const { text, skipped } = this;
    if (!text.startsComment()) {
      const word = text.quote().toLowerCase();
      if (!plain.has(word)) skipped.count(word);
    }
    // A statement that is not read may run on over several lines too.
    text.skipStatement();
  }

  private triangulateFaces(): void {
    const { polygons } = this;
    const rough: number[] = [];
    let steps = 0;
    for (let at = 0; at < polygons.length; at += polygons.at(at) + 2) {
      const count = polygons.at(at);
      if (count === 4 && this.cutQuad(at + 2)) continue;
      const cut = triangulate(Array.from({ length: count }, (_, corner) => this.place(at + 2 + corner)));
      for (const corner of cut.corners) this.triangles.push(polygons.at(at + 2 + corner));
      if (cut.rough) rough.push(polygons.at(at + 1));
      steps += cut.steps;
      if (steps > mostCutting)
        this.file.stop('mesh.unreadable', { which: 'cutting' }, this.text.textPlace(polygons.at(at + 1)));
    }
    this.sayPolygons(rough);
  }

  /** Where the corner at `index` of the list of polygons lies. */
  private place(index: number): Vec3 {
    const { positions } = this;
    const i = this.polygons.at(index) * 3;
    return [positions.at(i), positions.at(i + 1), positions.at(i + 2)];
  }

  /** Cuts a quadrilateral along the diagonal that lies inside it; false where it needs more thought. */
  private cutQuad(first: number): boolean {
    const { polygons, positions, triangles, quad } = this;
    for (let corner = 0; corner < 4; corner++) {
      const i = polygons.at(first + corner) * 3;
      for (let axis = 0; axis < 3; axis++) quad[corner * 3 + axis] = positions.at(i + axis);
    }
    const from = quadCorner(quad);
    if (from === undefined) return false;
    for (const corner of quadCorners) triangles.push(polygons.at(first + ((from + corner) % 4)));
    return true;
  }

  private sayPolygons(rough: readonly number[]): void {
    const { file, polygonCount } = this;
    if (polygonCount > 0) file.say('mesh.polygons-cut', { measured: polygonCount });
    if (rough.length > 0)
      file.say('mesh.polygons-rough', { measured: rough.length }, this.text.textPlace(rough[0]));
  }
}

/** Keeps the triangles whose corners are all finite; the array is filled from its start. */
function finiteFaces(positions: Float64Array, triangles: Uint32Array): Uint32Array {
  const isBad = (v: number): boolean =>
    !Number.isFinite(positions[v * 3] * 0 + positions[v * 3 + 1] * 0 + positions[v * 3 + 2] * 0);
  let kept = 0;
  for (let h = 0; h < triangles.length; h += 3) {
    if (isBad(triangles[h]) || isBad(triangles[h + 1]) || isBad(triangles[h + 2])) continue;
    triangles.copyWithin(kept, h, h + 3);
    kept += 3;
  }
  return kept === triangles.length ? triangles : triangles.slice(0, kept);
}
