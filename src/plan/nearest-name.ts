import { distance } from 'fastest-levenshtein';

/** The known name a mistyped one most likely means, or undefined where none is near. */
export function nearestName(written: string, known: readonly string[]): string | undefined {
  const plain = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  // Long texts are no mistyped names, and comparing them would cost time.
  if (written.length > 60) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(written.length / 3)) + 1;
  for (const name of known) {
    const apart = distance(plain(written), plain(name));
    if (apart < least) {
      least = apart;
      best = name;
    }
  }
  return best;
}
