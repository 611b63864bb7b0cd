/**
 * The one cache: results by the content they were made from. Keeps the `capacity` most recently used results.
 * A run that is not going to be repeated passes none and saves the hashing.
 */
export class Cache {
  private readonly results = new Map<string, unknown>();
  hits = 0;
  misses = 0;

  constructor(private readonly capacity = 2000) {}

  has(key: string): boolean {
    return this.results.has(key);
  }

  memoize<T>(key: string, make: () => T): T {
    if (this.results.has(key)) {
      this.hits++;
      const known = this.results.get(key) as T;
      this.results.delete(key);
      this.results.set(key, known);
      return known;
    }
    this.misses++;
    const made = make();
    this.results.set(key, made);
    const oldest = this.results.keys().next();
    if (this.results.size > this.capacity && !oldest.done) this.results.delete(oldest.value);
    return made;
  }
}
