import { createHash } from 'node:crypto';
import { open, readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { readPlan } from '../../plan/index.ts';
import type { Refusal } from './guard.ts';

/** Largest master served, bytes: the reader of meshes takes no more. */
const largestFile = 2 ** 31;

export interface PlanState {
  readonly name: string;
  readonly text: string;
  /** SHA-256 of the bytes on disk. */
  readonly hash: string;
}

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * The plan and what lies beside it: all the server may read or write. Only files the plan on disk names are given
 * out, and only from inside `root` once every link has been followed.
 */
export class PlanFolder {
  private constructor(
    readonly path: string,
    private readonly root: string,
  ) {}

  static async open(planPath: string, root = dirname(resolve(planPath))): Promise<PlanFolder> {
    return new PlanFolder(resolve(planPath), await realpath(root));
  }

  async state(): Promise<PlanState> {
    const bytes = await readFile(this.path);
    return { name: basename(this.path), text: bytes.toString('utf8'), hash: hashOf(bytes) };
  }

  /** Paths of the masters' files as the plan on disk writes them. */
  private async named(): Promise<ReadonlySet<string>> {
    const { plan } = readPlan(new Uint8Array(await readFile(this.path)), basename(this.path));
    const paths = Object.values(plan?.masters ?? {}).flatMap((master) => {
      if (master.kind === 'mesh') return [master.file];
      return 'outline' in master.shape ? [master.shape.outline] : [];
    });
    return new Set(paths);
  }

  /** Where the masters' files lie that exist, for watching. */
  async watched(): Promise<string[]> {
    return [this.path, ...[...(await this.named())].map((path) => resolve(dirname(this.path), path))];
  }

  /** Bytes of a file the plan names. */
  async file(path: string): Promise<Uint8Array | Refusal> {
    if (!(await this.named()).has(path))
      return { status: 403, says: `the plan on disk names no file ${path}` };
    if (isAbsolute(path)) return outside(path);
    let real: string;
    try {
      real = await realpath(resolve(dirname(this.path), path));
    } catch {
      return { status: 404, says: `there is no file ${path}` };
    }
    if (!this.holds(real)) return outside(path);
    const what = await stat(real);
    if (!what.isFile() || what.size > largestFile)
      return { status: 403, says: `${path} is no file to be read` };
    return new Uint8Array(await readFile(real));
  }

  private holds(real: string): boolean {
    const inside = relative(this.root, real);
    return inside !== '..' && !inside.startsWith(`..${sep}`) && !isAbsolute(inside);
  }

  /**
   * Writes the plan, unless it is no longer the one the person began from: then nothing is written and what is there
   * now is given back. Written beside it and renamed, so that nobody sees half a plan.
   */
  async save(
    text: Uint8Array,
    expected: string,
  ): Promise<{ readonly saved: boolean; readonly now: PlanState }> {
    const now = await this.state();
    if (now.hash !== expected) return { saved: false, now };
    const real = await realpath(this.path);
    const fresh = join(dirname(real), `.${basename(real)}.${process.pid}.tmp`);
    try {
      await writeFile(fresh, text, { mode: (await stat(real)).mode });
      await rename(fresh, real);
    } finally {
      await rm(fresh, { force: true });
    }
    return { saved: true, now: await this.state() };
  }

  /** Puts a new file beside the plan. A plain name of a mesh or an outline; one that is there already is not touched. */
  async add(name: string, bytes: Uint8Array): Promise<Refusal | undefined> {
    if (!/^[\p{L}\p{N}][\p{L}\p{N} ._-]*\.(stl|obj|3mf|svg|dxf)$/iu.test(name)) {
      return { status: 400, says: `${name} is not the plain name of a mesh or an outline` };
    }
    try {
      const file = await open(join(await realpath(dirname(this.path)), name), 'wx');
      try {
        await file.writeFile(bytes);
      } finally {
        await file.close();
      }
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      return { status: 409, says: `${name} is there already; nothing was written` };
    }
    return undefined;
  }
}

const outside = (path: string): Refusal => ({
  status: 403,
  says: `${path} lies outside the plan's folder; start discwright preview with --root to widen what may be read`,
});
