type Numbers = Float64Array | Uint32Array;

/** A typed array that grows while a file is read whose counts are not known beforehand. */
export class GrowableArray<T extends Numbers> {
  length = 0;

  /** `items` is a typed array of the first capacity. */
  constructor(private items: T) {}

  push(value: number): void {
    if (this.length === this.items.length) this.grow();
    this.items[this.length++] = value;
  }

  at(index: number): number {
    return this.items[index];
  }

  truncate(length: number): void {
    this.length = length;
  }

  /** The items so far, as an array of their own. */
  done(): T {
    return this.items.slice(0, this.length) as T;
  }

  private grow(): void {
    const make = this.items.constructor as new (size: number) => T;
    const larger = new make(Math.ceil(this.items.length * 1.6) + 16);
    larger.set(this.items);
    this.items = larger;
  }
}

export const growableFloats = (): GrowableArray<Float64Array> => new GrowableArray(new Float64Array(1024));
export const growableIndices = (): GrowableArray<Uint32Array> => new GrowableArray(new Uint32Array(1024));
