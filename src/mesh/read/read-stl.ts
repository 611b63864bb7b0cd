import type { RawMesh } from '../raw.ts';
import { growableFloats } from './growable-array.ts';
import { type MeshFile, mostFileTriangles } from './mesh-file.ts';
import { TextCursor } from './text-cursor.ts';

/**
 * Binary STL (M. Burns, "Automated Fabrication", 1993, section 6.5; Library of Congress fdd000504): 80 bytes of
 * header, uint32 count, then per triangle 12 float32 (normal and three corners) and a uint16; little-endian.
 */
const headBytes = 84;
const faceBytes = 50;

/** Whether the file is as long as the count in a binary STL header says: stronger proof than the word "solid". */
export const isBinaryStl = (bytes: Uint8Array): boolean =>
  bytes.length >= headBytes && bytes.length === headBytes + faceBytes * countIn(bytes);

const countIn = (bytes: Uint8Array): number =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(80, true);

/**
 * Reads binary STL: three points a face, nothing welded, no unit; stored normals and attributes are not used.
 * A file too short for its count is a stop; of one too long the faces counted are read, with a warning.
 */
export function readBinaryStl(file: MeshFile): RawMesh {
  const { bytes } = file;
  if (bytes.length < headBytes) return file.stop('mesh.truncated', { which: 'header', size: bytes.length });
  const count = countIn(bytes);
  const room = Math.floor((bytes.length - headBytes) / faceBytes);
  if (count > room)
    file.stop('mesh.truncated', { which: 'faces', measured: room, limit: count, size: bytes.length });
  if (count === 0) file.stop('mesh.no-faces', { which: 'header', room: room > 0 ? room : undefined });
  file.limit(count, mostFileTriangles, 'triangles');
  const end = headBytes + faceBytes * count;
  if (bytes.length > end)
    file.say('mesh.extra-bytes', { measured: bytes.length, limit: end, triangles: count });
  return facesOf(file, count);
}

function facesOf(file: MeshFile, count: number): RawMesh {
  const { bytes } = file;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const positions = new Float64Array(count * 9);
  let kept = 0;
  let firstBad = -1;
  for (let face = 0; face < count; face++) {
    const at = headBytes + faceBytes * face + 12;
    let sum = 0;
    for (let i = 0; i < 9; i++) {
      const value = view.getFloat32(at + 4 * i, true);
      positions[kept + i] = value;
      // Not the values but zeros or NaN: large ones must not overflow.
      sum += value * 0;
    }
    if (sum === 0) kept += 9;
    else if (firstBad < 0) firstBad = face;
  }
  const first = { which: 'face', face: firstBad + 1, byte: headBytes + faceBytes * firstBad } as const;
  file.notFinite(count - kept / 9, count, first);
  return soupOf(kept === positions.length ? positions : positions.slice(0, kept));
}

/** Three points a face: triangles are simply 0, 1, 2, ... */
function soupOf(positions: Float64Array): RawMesh {
  const triangles = new Uint32Array(positions.length / 3);
  for (let i = 0; i < triangles.length; i++) triangles[i] = i;
  return { positions, triangles };
}

/** Reads ASCII STL: like binary STL, any number of solids in one file. Words may be in upper or lower case. */
export function readAsciiStl(file: MeshFile): RawMesh {
  return new AsciiStl(file).read();
}

class AsciiStl {
  private readonly text: TextCursor;
  private readonly positions = growableFloats();
  private faces = 0;
  private dropped = 0;
  private firstDropped = 0;
  private solids = 0;
  private open = false;

  constructor(private readonly file: MeshFile) {
    this.text = new TextCursor(file);
  }

  read(): RawMesh {
    const { text, file } = this;
    while (text.next()) {
      if (text.is('facet')) this.facet();
      else if (text.is('solid')) this.begin();
      else if (text.is('endsolid')) {
        this.open = false;
        text.skipLine();
      } else this.unexpected('facet', 'endsolid');
    }
    if (this.faces === 0) file.stop('mesh.no-faces', { which: 'facets' });
    if (this.open) file.say('mesh.no-end', { triangles: this.faces });
    if (this.solids > 1) file.say('mesh.several-solids', { which: 'solids', measured: this.solids });
    if (this.dropped > 0) {
      const at = text.textPlace(this.firstDropped);
      file.notFinite(this.dropped, this.faces, { which: 'line', line: at.line }, at);
    }
    return soupOf(this.positions.done());
  }

  /** A name runs to the end of its line, or up to the first facet where all is written in one line. */
  private begin(): void {
    const { text } = this;
    this.solids++;
    this.open = true;
    while (text.nextInLine()) {
      if (!text.is('facet')) continue;
      const at = text.start;
      if (text.nextInLine() && text.is('normal')) {
        text.position = at;
        return;
      }
    }
  }

  private facet(): void {
    const { text, file, positions } = this;
    this.faces++;
    file.limit(this.faces, mostFileTriangles, 'triangles');
    const start = text.start;
    this.word();
    // The normal follows from the corners; what is written for it does not matter.
    for (let skipped = 0; skipped < 4 && !text.is('outer'); skipped++) this.word();
    if (!text.is('outer')) this.unexpected('outer loop');
    this.expect('loop');
    const from = positions.length;
    let corners = 0;
    for (this.word(); text.is('vertex'); this.word()) {
      corners++;
      if (corners > 3) this.corners('facet-many', corners, start);
      for (let axis = 0; axis < 3; axis++) {
        this.word();
        positions.push(text.number('vertex'));
      }
    }
    if (!text.is('endloop')) this.unexpected('vertex', 'endloop');
    if (corners < 3) this.corners('facet-few', corners, start);
    this.expect('endfacet');
    for (let i = from; i < from + 9; i++) {
      if (Number.isFinite(positions.at(i))) continue;
      if (this.dropped === 0) this.firstDropped = start;
      this.dropped++;
      positions.truncate(from);
      return;
    }
  }

  private corners(which: 'facet-many' | 'facet-few', count: number, start: number): never {
    return this.file.stop('mesh.unreadable', { which, facet: this.faces, count }, this.text.textPlace(start));
  }

  private word(): void {
    if (this.text.next()) return;
    const whole = { measured: this.faces - 1, triangle: this.faces };
    this.file.stop('mesh.truncated', { which: 'middle', ...whole }, this.text.textPlace());
  }

  private expect(word: string): void {
    this.word();
    if (!this.text.is(word)) this.unexpected(word);
  }

  private unexpected(wanted: string, orWanted?: string): never {
    const { text } = this;
    const said = { which: 'unexpected', text: text.quote(), wanted, orWanted } as const;
    return this.file.stop('mesh.unreadable', said, text.textPlace());
  }
}
