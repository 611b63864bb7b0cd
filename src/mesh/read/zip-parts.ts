import { Inflate } from 'fflate';
import type { CodeValues } from '../../findings/index.ts';
import type { MeshFile } from './mesh-file.ts';

/** Most bytes all parts read may unpack to: about 7 million triangles in XML. */
const mostUnpacked = 2 ** 29;
/** A part that unpacks to more than this many times its packed size is no mesh: XML of points packs 4 to 30 times. */
const mostGrowth = 100;
/** Bytes below which growth does not matter. */
const harmless = 2 ** 24;
const mostEntries = 20_000;
/** Packed bytes taken at once: deflate makes at most 1032 times as many of them. */
const slice = 16_384;

interface Entry {
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly offset: number;
}

/**
 * The parts of a ZIP archive (PKWARE APPNOTE 6.3, with ZIP64), found by its directory at the end. Sizes in the
 * directory are not trusted: what comes out is counted while it is unpacked, and its checksum compared.
 */
export class ZipParts {
  private readonly entries = new Map<string, Entry>();
  private readonly view: DataView;
  private unpacked = 0;

  /** `limit` is how many bytes all parts together may unpack to. */
  constructor(
    private readonly file: MeshFile,
    private readonly limit = mostUnpacked,
  ) {
    const { bytes } = file;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const { count, offset } = this.directory();
    if (count > mostEntries) this.damaged({ which: 'zip-entries', count });
    this.readDirectory(count, offset);
  }

  /** Whether there is a part of that name; a leading slash and upper or lower case do not matter (OPC). */
  has(name: string): boolean {
    return this.entries.has(partKey(name));
  }

  /** Hands over the unpacked bytes of a part that is there, piece by piece. */
  unpack(name: string, take: (piece: Uint8Array) => void): void {
    const entry = this.entries.get(partKey(name));
    if (!entry) throw new RangeError(`unpack: there is no part ${name}`);
    const data = this.packedBytes(name, entry);
    if (entry.method !== 0 && entry.method !== 8)
      this.damaged({ which: 'zip-method', part: name, count: entry.method });
    let crc = 0xffffffff;
    let size = 0;
    this.pieces(name, entry.method, data, (piece, packed) => {
      size += piece.length;
      this.unpacked += piece.length;
      if (this.unpacked > this.limit) this.tooLarge(name, this.unpacked, this.limit);
      if (size > harmless + mostGrowth * packed) this.tooLarge(name, size, harmless + mostGrowth * packed);
      crc = crcOver(piece, crc);
      take(piece);
    });
    if ((crc ^ 0xffffffff) >>> 0 !== entry.crc) this.damaged({ which: 'zip-checksum', part: name });
  }

  /** Hands over unpacked pieces, each with how many packed bytes were taken up to it. */
  private pieces(
    name: string,
    method: number,
    data: Uint8Array,
    take: (piece: Uint8Array, packed: number) => void,
  ): void {
    const unpacked: Uint8Array[] = [];
    const inflate = new Inflate((piece) => unpacked.push(piece));
    for (let at = 0; at === 0 || at < data.length; at += slice) {
      const packed = data.subarray(at, at + slice);
      if (method === 0) unpacked.push(packed);
      else this.push(name, inflate, packed, at + slice >= data.length);
      for (const piece of unpacked.splice(0)) if (piece.length > 0) take(piece, at + packed.length);
    }
  }

  private push(name: string, inflate: Inflate, packed: Uint8Array, last: boolean): void {
    try {
      inflate.push(packed, last);
    } catch {
      this.damaged({ which: 'zip-rubbish', part: name });
    }
  }

  private tooLarge(part: string, measured: number, limit: number): never {
    return this.file.stop('mesh.unpacks-too-large', { part, measured, limit });
  }

  private packedBytes(name: string, { flags, offset, packed }: Entry): Uint8Array {
    if ((flags & 1) !== 0) this.file.stop('mesh.encrypted', { which: 'part', part: name });
    if (!this.isAt(offset, 0x04034b50, 30)) this.damaged({ which: 'zip-place', part: name });
    const start =
      offset + 30 + this.view.getUint16(offset + 26, true) + this.view.getUint16(offset + 28, true);
    if (start + packed > this.file.bytes.length) this.damaged({ which: 'zip-past-end', part: name });
    return this.file.bytes.subarray(start, start + packed);
  }

  /** Where the directory begins and how many entries it has. */
  private directory(): { readonly count: number; readonly offset: number } {
    const { view } = this;
    const last = view.byteLength - 22;
    let end = last;
    while (end >= 0 && end > last - 65_536 && !this.isAt(end, 0x06054b50, 22)) end--;
    if (!this.isAt(end, 0x06054b50, 22)) return this.file.stop('mesh.truncated', { which: 'zip' });
    const short = { count: view.getUint16(end + 10, true), offset: view.getUint32(end + 16, true) };
    if (!this.isAt(end - 20, 0x07064b50, 20)) return short;
    const long = this.long(end - 20 + 8);
    if (!this.isAt(long, 0x06064b50, 56)) this.damaged({ which: 'zip64-directory' });
    return { count: this.long(long + 32), offset: this.long(long + 48) };
  }

  private readDirectory(count: number, offset: number): void {
    const { view, file } = this;
    let at = offset;
    for (let i = 0; i < count; i++) {
      if (!this.isAt(at, 0x02014b50, 46)) this.damaged({ which: 'zip-directory' });
      const nameEnd = at + 46 + view.getUint16(at + 28, true);
      const extraEnd = nameEnd + view.getUint16(at + 30, true);
      const next = extraEnd + view.getUint16(at + 32, true);
      if (next > view.byteLength) this.damaged({ which: 'zip-directory' });
      const name = new TextDecoder().decode(file.bytes.subarray(at + 46, nameEnd));
      this.entries.set(partKey(name), {
        flags: view.getUint16(at + 8, true),
        method: view.getUint16(at + 10, true),
        crc: view.getUint32(at + 16, true),
        ...this.sizes(at, nameEnd, extraEnd),
      });
      at = next;
    }
  }

  /** Packed size and offset; where they do not fit in 32 bits they stand in the ZIP64 extra field, in this order. */
  private sizes(at: number, extra: number, extraEnd: number): { packed: number; offset: number } {
    const { view } = this;
    const full = 0xffffffff;
    let packed = view.getUint32(at + 20, true);
    let offset = view.getUint32(at + 42, true);
    if (packed !== full && offset !== full) return { packed, offset };
    for (let field = extra; field + 4 <= extraEnd; field += 4 + view.getUint16(field + 2, true)) {
      if (view.getUint16(field, true) !== 1) continue;
      let value = field + 4;
      if (view.getUint32(at + 24, true) === full) value += 8;
      if (packed === full) {
        packed = this.long(value);
        value += 8;
      }
      if (offset === full) offset = this.long(value);
      break;
    }
    return { packed, offset };
  }

  /** A uint64; past the end of the file it is a number no place in it has. */
  private long(at: number): number {
    if (at < 0 || at + 8 > this.view.byteLength) return Number.MAX_SAFE_INTEGER;
    return Number(this.view.getBigUint64(at, true));
  }

  private isAt(at: number, signature: number, size: number): boolean {
    return at >= 0 && at + size <= this.view.byteLength && this.view.getUint32(at, true) === signature;
  }

  private damaged(said: Omit<CodeValues<'mesh.unreadable'>, 'file'>): never {
    return this.file.stop('mesh.unreadable', said);
  }
}

/** Part names are compared without a leading slash and without regard to case (ECMA-376 part 2, 6.2.2.3). */
export const partKey = (name: string): string => name.replaceAll('\\', '/').replace(/^\/+/, '').toLowerCase();

let crcTable: Uint32Array | undefined;

/** CRC-32 as in ZIP (polynomial 0xedb88320), carried on from `crc`. */
function crcOver(bytes: Uint8Array, crc: number): number {
  crcTable ??= Uint32Array.from({ length: 256 }, (_, n) => {
    let value = n;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
    return value;
  });
  let sum = crc;
  for (let i = 0; i < bytes.length; i++) sum = crcTable[(sum ^ bytes[i]) & 255] ^ (sum >>> 8);
  return sum;
}
