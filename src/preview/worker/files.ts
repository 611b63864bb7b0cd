import type { FileAccess } from '../../pipeline/index.ts';
import { leadsOut } from '../../plan/index.ts';
import { Outdated } from './send.ts';

const lastName = (path: string): string => path.split(/[/\\]/).at(-1) ?? path;

/** Files a person gave to the page, and those beside the plan where it came from a server or a preset. */
export class PageFiles {
  private readonly kept = new Map<string, Uint8Array>();
  private readonly fetched = new Map<string, Uint8Array>();

  keep(name: string, bytes: Uint8Array): void {
    this.kept.set(lastName(name), bytes);
  }

  /** What was fetched is fetched anew next time: the file may have changed on disk. */
  forget(): void {
    this.fetched.clear();
  }

  /** How the core reads files for one edit. `isLatest` is asked after each. */
  access(filesAt: string | undefined, isLatest: () => boolean): FileAccess {
    return async (path) => {
      const bytes = this.kept.get(lastName(path)) ?? (await this.fetch(filesAt, path));
      if (!isLatest()) throw new Outdated();
      if (typeof bytes === 'string') return { fault: bytes };
      return { bytes, name: lastName(path), outside: leadsOut(path) };
    };
  }

  private async fetch(filesAt: string | undefined, path: string): Promise<Uint8Array | string> {
    if (filesAt === undefined) return `${path} is not here yet; drop it on the page`;
    const address = filesAt + (filesAt.includes('?') ? encodeURIComponent(path) : path);
    const known = this.fetched.get(address);
    if (known) return known;
    let answer: Response;
    try {
      answer = await fetch(address);
    } catch {
      return `${path} cannot be fetched; is discwright still running?`;
    }
    if (!answer.ok) return answer.status === 404 ? `there is no file ${path}` : await answer.text();
    const bytes = new Uint8Array(await answer.arrayBuffer());
    this.fetched.set(address, bytes);
    return bytes;
  }
}
