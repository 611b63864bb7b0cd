import { lstat, mkdir, open, realpath, stat } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { filesNamed, leadsOut, readPlan } from '../../plan/index.ts';
import type { Refusal } from './guard.ts';
import { readRegularFile } from './regular-file.ts';
import { hashOf, planBytes, replacePlan } from './replace-plan.ts';
import { type LogState, logPath, logState, replaceLog } from './trial-log.ts';

export interface PlanState {
  readonly name: string;
  readonly text: string;
  /** SHA-256 of the bytes on disk. */
  readonly hash: string;
}

/** Endings of what a plan may name: meshes and outlines. */
const ending = /\.(stl|obj|3mf|svg|dxf)$/i;
/** Folder beside the plan that new masters are put into. */
const mastersFolder = 'masters';

/** Paths of the masters' files as the plan on disk writes them. */
const namedBy = async (planPath: string): Promise<readonly string[]> =>
  filesNamed(readPlan(await planBytes(planPath), basename(planPath)).plan);

/**
 * The masters a plan names outside its folder that may be shown all the same, as real paths: files with the ending of a
 * mesh or an outline, and just where the plan says: a link on the way there is not followed.
 */
export async function mastersOutside(planPath: string): Promise<readonly string[]> {
  const folder = await realpath(dirname(planPath));
  const outside = (await namedBy(planPath)).filter((path) => leadsOut(path) && ending.test(path));
  const found = await Promise.all(
    outside.map(async (path) => {
      const full = resolve(folder, path);
      const real = await realpath(full).catch(() => undefined);
      return real === full && (await stat(real)).isFile() ? [real] : [];
    }),
  );
  return found.flat();
}

/**
 * The plan and what lies beside it: all the server may read or write. Only files the plan on disk names are given
 * out, and only from inside `root` once every link has been followed, or if they are one of `also` (real paths).
 */
export class PlanFolder {
  private constructor(
    readonly path: string,
    private readonly root: string,
    private readonly also: ReadonlySet<string>,
  ) {}

  static async open(
    planPath: string,
    root = dirname(resolve(planPath)),
    also: readonly string[] = [],
  ): Promise<PlanFolder> {
    return new PlanFolder(resolve(planPath), await realpath(root), new Set(also));
  }

  async state(): Promise<PlanState> {
    const bytes = await planBytes(this.path);
    return { name: basename(this.path), text: Buffer.from(bytes).toString('utf8'), hash: hashOf(bytes) };
  }

  /** Where the masters' files lie that exist, for watching. */
  async watched(): Promise<string[]> {
    return [this.path, ...(await namedBy(this.path)).map((path) => resolve(dirname(this.path), path))];
  }

  /** Bytes of a file the plan names. */
  async file(path: string): Promise<Uint8Array | Refusal> {
    if (!(await namedBy(this.path)).includes(path))
      return { status: 403, says: `the plan on disk names no file ${path}` };
    let real: string;
    try {
      real = await realpath(resolve(dirname(this.path), path));
    } catch {
      return leadsOut(path) ? outside(path) : { status: 404, says: `there is no file ${path}` };
    }
    if (!this.also.has(real) && (isAbsolute(path) || !this.holds(real))) return outside(path);
    const read = await readRegularFile(real);
    return 'fault' in read ? { status: 403, says: `${path} ${read.fault}` } : read.bytes;
  }

  private holds(real: string): boolean {
    const inside = relative(this.root, real);
    return inside !== '..' && !inside.startsWith(`..${sep}`) && !isAbsolute(inside);
  }

  /**
   * Writes the plan, unless it is no longer the one the person began from: then nothing is written and what is there
   * now is given back.
   */
  async save(
    text: Uint8Array,
    expected: string,
  ): Promise<{ readonly saved: boolean; readonly now: PlanState }> {
    const saved = await replacePlan(this.path, text, expected);
    return { saved, now: await this.state() };
  }

  /** The log of the plan's trials lies beside it; it need not be there. */
  get logPath(): string {
    return logPath(this.path);
  }

  log(): Promise<LogState> {
    return logState(this.logPath);
  }

  /** As `save`, for the log; without `expected` there must be none yet. */
  async saveLog(
    text: Uint8Array,
    expected: string | undefined,
  ): Promise<{ readonly saved: boolean; readonly now: LogState }> {
    const saved = await replaceLog(this.logPath, text, expected);
    return { saved, now: await this.log() };
  }

  /**
   * Puts a new file into the masters' folder beside the plan. A plain name of a mesh or an outline; one that is there
   * already is not touched: with the same bytes it is as good as written, with others refused.
   */
  async add(name: string, bytes: Uint8Array): Promise<Refusal | undefined> {
    if (!/^[\p{L}\p{N}][\p{L}\p{N} ._-]*$/u.test(name) || !ending.test(name)) {
      return { status: 400, says: `${name} is not the plain name of a mesh or an outline` };
    }
    const folder = join(dirname(this.path), mastersFolder);
    await mkdir(folder, { recursive: true });
    const real = await realpath(folder);
    if (!this.holds(real)) return outside(mastersFolder);
    const path = join(real, name);
    try {
      const file = await open(path, 'wx');
      try {
        await file.writeFile(bytes);
      } finally {
        await file.close();
      }
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      return (await isSame(path, bytes))
        ? undefined
        : {
            status: 409,
            says: `another ${mastersFolder}/${name} is there already; give the new file another name and drop it again`,
          };
    }
    return undefined;
  }
}

async function isSame(path: string, bytes: Uint8Array): Promise<boolean> {
  const what = await lstat(path);
  if (!what.isFile() || what.size !== bytes.length) return false;
  const there = await readRegularFile(path);
  return 'bytes' in there && hashOf(there.bytes) === hashOf(bytes);
}

const outside = (path: string): Refusal => ({
  status: 403,
  says:
    `${path} lies outside the plan's folder and was not there, or not named, when discwright preview began; ` +
    'start it again, or with --root to widen what may be read',
});
