import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { type Picture, renderPicture } from '../../src/export/picture.ts';
import { encodePng } from '../../src/export/png.ts';
import { box, torus } from './shapes.ts';

interface Decoded {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): number[];
}

/** CRC-32 by the table method of ISO 3309, written apart from the encoder's. */
const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = (c & 1) === 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crcOf = (bytes: Uint8Array): number =>
  ~bytes.reduce((crc, byte) => crcTable[(crc ^ byte) & 255] ^ (crc >>> 8), -1) >>> 0;

/** A PNG decoder for what we write, by the standard (ISO/IEC 15948) and with Node's own inflate. */
function decode(png: Uint8Array): Decoded {
  const bytes = Buffer.from(png);
  expect(bytes.toString('hex', 0, 8)).toBe('89504e470d0a1a0a');
  const chunks: Record<string, Buffer> = {};
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    const type = bytes.toString('latin1', at + 4, at + 8);
    expect(bytes.readUInt32BE(at + 8 + length)).toBe(crcOf(bytes.subarray(at + 4, at + 8 + length)));
    chunks[type] = bytes.subarray(at + 8, at + 8 + length);
    at += 12 + length;
  }
  expect(Object.keys(chunks)).toEqual(['IHDR', 'IDAT', 'IEND']);
  const [width, height] = [chunks.IHDR.readUInt32BE(0), chunks.IHDR.readUInt32BE(4)];
  expect([...chunks.IHDR.subarray(8)]).toEqual([8, 2, 0, 0, 0]);
  const rgb = unfilter(inflateSync(chunks.IDAT), width * 3, height);
  return { width, height, at: (x, y) => [...rgb.subarray((y * width + x) * 3, (y * width + x) * 3 + 3)] };
}

function unfilter(data: Buffer, stride: number, rows: number): Uint8Array {
  expect(data.length).toBe((stride + 1) * rows);
  const out = new Uint8Array(stride * rows);
  for (let y = 0; y < rows; y++) {
    const filter = data[y * (stride + 1)];
    for (let i = 0; i < stride; i++) {
      const a = i >= 3 ? out[y * stride + i - 3] : 0;
      const b = y > 0 ? out[(y - 1) * stride + i] : 0;
      const c = i >= 3 && y > 0 ? out[(y - 1) * stride + i - 3] : 0;
      const p = a + b - c;
      const nearest = [a, b, c].reduce((best, v) => (Math.abs(p - v) < Math.abs(p - best) ? v : best));
      const guess = [0, a, b, Math.floor((a + b) / 2), nearest][filter];
      out[y * stride + i] = data[y * (stride + 1) + 1 + i] + guess;
    }
  }
  return out;
}

const white = [1, 1, 1] as const;
const picture = (items: Picture['items'], more: Partial<Picture> = {}): Decoded =>
  decode(
    renderPicture({
      items,
      view: { direction: [0, 1, 0], up: [0, 0, 1] },
      width: 120,
      height: 90,
      background: white,
      ...more,
    }),
  );

describe('the file', () => {
  test('the check sum used here: CRC-32 of "123456789" is cbf43926 (its usual check value)', () => {
    expect(crcOf(Buffer.from('123456789'))).toBe(0xcbf43926);
  });

  test('any pixels come back', () => {
    let seed = 1;
    const noise = Uint8Array.from({ length: 3 * 17 * 13 }, () => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed >> 8;
    });
    const decoded = decode(encodePng(noise, 17, 13));
    expect(decoded.width).toBe(17);
    for (let i = 0; i < 17 * 13; i++) {
      expect(decoded.at(i % 17, Math.floor(i / 17))).toEqual([...noise.subarray(3 * i, 3 * i + 3)]);
    }
  });

  test('a wrong number of pixels is a programmer error', () => {
    expect(() => encodePng(new Uint8Array(5), 1, 1)).toThrow(RangeError);
  });

  test('size as asked, and the same bytes again', () => {
    const asked: Picture = {
      items: [{ mesh: torus(20, 5, 40, 20), color: [0.5, 0.6, 0.5] }],
      view: { direction: [1, 1, -1], up: [0, 0, 1] },
      width: 64,
      height: 48,
      background: white,
    };
    const png = renderPicture(asked);
    expect(decode(png)).toMatchObject({ width: 64, height: 48 });
    expect(renderPicture(asked)).toEqual(png);
  });
});

describe('what is in it', () => {
  test('the background in the corner, the part in the middle in its own hue', () => {
    const seen = picture([{ mesh: box([10, 10, 10]), color: [0.8, 0, 0] }], { background: [0, 0, 1] });
    expect(seen.at(1, 1)).toEqual([0, 0, 255]);
    const [r, g, b] = seen.at(60, 45);
    expect(r).toBeGreaterThan(80);
    expect([g, b]).toEqual([0, 0]);
  });

  test('the part fills the picture but for 4 % on the tighter side', () => {
    const seen = picture([{ mesh: box([10, 10, 10]), color: [0, 0, 0] }]);
    // 90 pixels high, 3.6 of them margin: 82.8 x 82.8 pixels in the middle.
    expect(seen.at(60, 2)).toEqual([255, 255, 255]);
    expect(seen.at(60, 5)).toEqual([0, 0, 0]);
    expect(seen.at(60 - 43, 45)).toEqual([255, 255, 255]);
    expect(seen.at(60 - 40, 45)).toEqual([0, 0, 0]);
  });

  test('the nearer of two hides the other, whichever comes first', () => {
    const near = { mesh: box([4, 4, 4], [3, -10, 3]), color: [0, 1, 0] as const };
    const far = { mesh: box([10, 10, 10]), color: [1, 0, 0] as const };
    for (const items of [
      [near, far],
      [far, near],
    ]) {
      const seen = picture(items);
      expect(seen.at(60, 45)[0]).toBe(0);
      expect(seen.at(60, 45)[1]).toBeGreaterThan(0);
      expect(seen.at(60, 12)[0]).toBeGreaterThan(0);
    }
  });

  test('up is up, and right is right', () => {
    const seen = picture([
      { mesh: box([10, 10, 10]), color: [1, 0, 0] },
      { mesh: box([10, 10, 10], [10, 0, 0]), color: [0, 1, 0] },
      { mesh: box([20, 10, 10], [0, 0, 10]), color: [0, 0, 1] },
    ]);
    const strongest = (x: number, y: number) => seen.at(x, y).indexOf(Math.max(...seen.at(x, y)));
    expect([strongest(40, 65), strongest(80, 65), strongest(60, 25)]).toEqual([0, 1, 2]);
  });

  test('a matrix moves an item; a mirror leaves it lit from the same side', () => {
    const gray = [0.7, 0.7, 0.7] as const;
    const plain = picture([{ mesh: box([10, 10, 10], [-5, -5, -5]), color: gray }]);
    const mirrored = picture([
      {
        mesh: box([10, 10, 10], [-5, -5, -5]),
        color: gray,
        matrix: [-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1],
      },
    ]);
    expect(mirrored.at(60, 45)).toEqual(plain.at(60, 45));
  });

  test('a pit is darker than the face round it', () => {
    const slab = box([10, 3, 10], [0, 2, 0]);
    const frame = [
      box([10, 2, 4]),
      box([10, 2, 4], [0, 0, 6]),
      box([4, 2, 2], [0, 0, 4]),
      box([4, 2, 2], [6, 0, 4]),
    ];
    const gray = [0.7, 0.7, 0.7] as const;
    const seen = picture([slab, ...frame].map((mesh) => ({ mesh, color: gray })));
    expect(seen.at(55, 40)[0]).toBeLessThan(seen.at(60, 20)[0] - 20);
  });

  test('nothing to show gives the background', () => {
    expect(picture([], { background: [0, 0, 0] }).at(60, 45)).toEqual([0, 0, 0]);
  });

  test('looking along up is a programmer error', () => {
    expect(() => picture([], { view: { direction: [0, 0, 1], up: [0, 0, 2] } })).toThrow(RangeError);
  });
});
