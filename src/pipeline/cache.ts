/** Where results outlast the run. Gives undefined for what it does not have; never throws for want of room or rights. */
export interface ResultStore {
  read(key: string): unknown;
  write(key: string, value: unknown): void;
}

/** What is made quicker than this (ms), without what is kept by itself, is quicker made again than read. */
const worthKeeping = 5;

/**
 * The one cache: results by the content they were made from. Keeps the `capacity` most recently used results, and, given a
 * store, what took long for later runs. A run that is not going to be repeated passes none and saves the hashing.
 */
export class Cache {
  private readonly results = new Map<string, unknown>();
  /** Time (ms) taken by what was made or read within what is being made just now. */
  private within = 0;
  hits = 0;
  misses = 0;

  constructor(
    private readonly capacity = 2000,
    private readonly store?: ResultStore,
  ) {}

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
    const outside = this.within;
    const start = performance.now();
    this.within = 0;
    try {
      return this.remember(key, this.stored<T>(key) ?? this.makeAnew(key, make, start));
    } finally {
      this.within = outside + performance.now() - start;
    }
  }

  private stored<T>(key: string): T | undefined {
    const known = this.store?.read(key);
    if (known !== undefined) this.hits++;
    return known as T | undefined;
  }

  private makeAnew<T>(key: string, make: () => T, start: number): T {
    this.misses++;
    const made = make();
    if (performance.now() - start - this.within >= worthKeeping) this.store?.write(key, made);
    return made;
  }

  private remember<T>(key: string, result: T): T {
    this.results.set(key, result);
    const oldest = this.results.keys().next();
    if (this.results.size > this.capacity && !oldest.done) this.results.delete(oldest.value);
    return result;
  }
}
