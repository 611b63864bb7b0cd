const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

function mixed(word: number): number {
  return Math.imul(rotated(Math.imul(word, 0xcc9e2d51), 15), 0x1b873593);
}

/**
 * MurmurHash3, x86, 32 bits (A. Appleby, in the public domain): a quick hash of bytes, no safeguard against anyone who
 * wants two texts to collide. An unsigned number.
 */
export function murmur(bytes: Uint8Array, seed: number): number {
  const words = bytes.length >>> 2;
  let hash = seed | 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const aligned =
    bytes.byteOffset % 4 === 0 ? new Uint32Array(bytes.buffer, bytes.byteOffset, words) : undefined;
  for (let i = 0; i < words; i++) {
    // A plain array read is many times as quick, and gives the same on all machines that browsers and Node run on.
    const word = aligned ? aligned[i] : view.getUint32(4 * i, true);
    hash = (Math.imul(rotated(hash ^ mixed(word), 13), 5) + 0xe6546b64) | 0;
  }
  let tail = 0;
  for (let i = bytes.length - 1; i >= 4 * words; i--) tail = (tail << 8) | bytes[i];
  if (bytes.length > 4 * words) hash ^= mixed(tail);
  hash ^= bytes.length;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
