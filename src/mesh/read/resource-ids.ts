import type { TextPlace } from '../../findings/index.ts';
import type { PackageFaults } from './package-faults.ts';

/** Resources and groups looked at; a package with more of either is not judged by them. */
const most = 100_000;
/** An id of the format is a whole number under 2^31; what is longer is not kept. */
const longest = 40;

/**
 * The ids of what stands in a model's resources, of the core or of an extension, and the property groups that
 * objects and triangles name (3MF core 1.4, 3.4.2 and chapter 4): none of it bears on the shape.
 */
export class ResourceIds {
  private readonly ids = new Set<string>();
  private readonly asked = new Map<string, TextPlace>();

  constructor(private readonly faults: PackageFaults) {}

  add(id: string, at: TextPlace): void {
    if (id.length > longest) return;
    if (this.ids.has(id)) this.faults.say('group-twice', id, at);
    else if (this.ids.size < most) this.ids.add(id);
  }

  ask(id: string | undefined, at: () => TextPlace): void {
    if (id !== undefined && id.length <= longest && this.asked.size < most && !this.asked.has(id))
      this.asked.set(id, at());
  }

  /** A group may stand after what names it: that is another rule, and harmless. */
  judge(): void {
    if (this.ids.size >= most) return;
    for (const [id, at] of this.asked) if (!this.ids.has(id)) this.faults.say('group-missing', id, at);
  }
}
