/** Counts of what was passed over, by kind; beyond `most` kinds (a file of rubbish must not fill memory) all in one. */
export class Kinds {
  private readonly counts = new Map<string, number>();
  private more = 0;

  constructor(private readonly most: number) {}

  get any(): boolean {
    return this.counts.size > 0;
  }

  count(kind: string): void {
    const known = this.counts.get(kind);
    if (known === undefined && this.counts.size >= this.most) this.more++;
    else this.counts.set(kind, (known ?? 0) + 1);
  }

  /** For a finding: `3 x "l"`. */
  values(): { readonly kinds: readonly string[]; readonly more?: number } {
    const kinds = [...this.counts].map(([kind, count]) => `${count} x "${kind}"`);
    return { kinds, ...(this.more > 0 && { more: this.more }) };
  }
}
