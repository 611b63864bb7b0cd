import { zlibSync } from 'fflate';

/**
 * A PNG (ISO/IEC 15948, color type 2, 8 bits a channel, not interlaced) of `rgb`: three bytes a pixel, rows from the
 * top. Each row takes the filter with the least sum of absolute differences, as the standard suggests. Same pixels,
 * same bytes: no time or text chunks.
 */
export function encodePng(rgb: Uint8Array, width: number, height: number): Uint8Array {
  if (rgb.length !== 3 * width * height)
    throw new RangeError(`encodePng: ${rgb.length} bytes for ${width} x ${height}`);
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header.set([8, 2, 0, 0, 0], 8);
  const chunks = [
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(filterRows(rgb, width * 3, height), { level: 9 })),
    chunk('IEND', new Uint8Array()),
  ];
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  const bytes = new Uint8Array(chunks.reduce((sum, part) => sum + part.length, signature.length));
  bytes.set(signature);
  let at = signature.length;
  for (const part of chunks) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  for (let i = 0; i < 4; i++) bytes[4 + i] = type.charCodeAt(i);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

/** CRC-32 as PNG and zip use it (polynomial 0xedb88320, reflected). */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** Predicts a byte from the one at its left, above, and above left. */
type Filter = (left: number, above: number, corner: number) => number;

/** The standard's five filters, by number. */
const filters: readonly Filter[] = [
  () => 0,
  (left) => left,
  (_, above) => above,
  (left, above) => (left + above) >> 1,
  paeth,
];

function paeth(left: number, above: number, corner: number): number {
  const guess = left + above - corner;
  const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - above), Math.abs(guess - corner)];
  if (a <= b && a <= c) return left;
  return b <= c ? above : corner;
}

function filterRows(rgb: Uint8Array, stride: number, rows: number): Uint8Array {
  const out = new Uint8Array((stride + 1) * rows);
  let above = new Uint8Array(stride);
  const tries = filters.map(() => new Uint8Array(stride));
  for (let row = 0; row < rows; row++) {
    const line = rgb.subarray(row * stride, (row + 1) * stride);
    const costs = filters.map((filter, i) => filterRow(filter, line, above, tries[i]));
    const best = costs.indexOf(Math.min(...costs));
    out[row * (stride + 1)] = best;
    out.set(tries[best], row * (stride + 1) + 1);
    above = line as Uint8Array<ArrayBuffer>;
  }
  return out;
}

/** Fills `to` with the differences from the filter's prediction; gives their sum as signed bytes. */
function filterRow(filter: Filter, line: Uint8Array, above: Uint8Array, to: Uint8Array): number {
  let cost = 0;
  for (let i = 0; i < line.length; i++) {
    const left = i < 3 ? 0 : line[i - 3];
    const corner = i < 3 ? 0 : above[i - 3];
    const difference = (line[i] - filter(left, above[i], corner)) & 0xff;
    to[i] = difference;
    cost += difference < 128 ? difference : 256 - difference;
  }
  return cost;
}
