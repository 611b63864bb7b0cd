const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

function mixed(word: number): number {
  return Math.imul(rotated(Math.imul(word, 0xcc9e2d51), 15), 0x1b873593);
}

const stepped = (hash: number, word: number): number =>
  (Math.imul(rotated(hash ^ word, 13), 5) + 0xe6546b64) | 0;

function finished(hash: number, length: number): number {
  let mix = hash ^ length;
  mix = Math.imul(mix ^ (mix >>> 16), 0x85ebca6b);
  mix = Math.imul(mix ^ (mix >>> 13), 0xc2b2ae35);
  return (mix ^ (mix >>> 16)) >>> 0;
}

/**
 * MurmurHash3, x86, 32 bits (A. Appleby, in the public domain), from two seeds at once: a quick hash of bytes, no
 * safeguard against anyone who wants two texts to collide. Unsigned numbers.
 */
export function murmur(bytes: Uint8Array, seeds: readonly [number, number]): [number, number] {
  const words = bytes.length >>> 2;
  let [one, other] = [seeds[0] | 0, seeds[1] | 0];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const aligned =
    bytes.byteOffset % 4 === 0 ? new Uint32Array(bytes.buffer, bytes.byteOffset, words) : undefined;
  for (let i = 0; i < words; i++) {
    // A plain array read is many times as quick, and gives the same on all machines that browsers and Node run on.
    const word = mixed(aligned ? aligned[i] : view.getUint32(4 * i, true));
    one = stepped(one, word);
    other = stepped(other, word);
  }
  if (bytes.length > 4 * words) {
    let tail = 0;
    for (let i = bytes.length - 1; i >= 4 * words; i--) tail = (tail << 8) | bytes[i];
    one ^= mixed(tail);
    other ^= mixed(tail);
  }
  return [finished(one, bytes.length), finished(other, bytes.length)];
}
