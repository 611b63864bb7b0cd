/** Numbers from 0 up to 1 that follow from a seed alone (Marsaglia, xorshift, Journal of Statistical Software 8, 2003). */
export function randomFrom(seed: number): () => number {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bd1e995) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}
