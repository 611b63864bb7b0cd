import type { CodeValues, TextPlace } from '../../findings/index.ts';
import type { MeshFile } from './mesh-file.ts';

type Which = CodeValues<'mesh.package-fault'>['which'];

/** Most faults of one kind that are said: a small package can hold a million of them. */
const mostOfAKind = 5;

/** What a package was found to break of its format without harm to the shape; each is said once. */
export class PackageFaults {
  private readonly said = new Map<Which, Set<string>>();

  constructor(private readonly file: MeshFile) {}

  say(which: Which, text?: string, at?: TextPlace): void {
    const before = this.said.get(which) ?? new Set();
    const one = text ?? '';
    if (before.has(one) || before.size >= mostOfAKind) return;
    this.said.set(which, before.add(one));
    this.file.say('mesh.package-fault', { which, ...(text !== undefined && { text }) }, at);
  }
}
