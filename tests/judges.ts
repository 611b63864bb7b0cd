import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Programs that are not ours judge our STL files: admesh, and stl2gts + gtscheck of the GTS library (Debian packages
 * `admesh` and `libgts-bin`). Each misses something: admesh sees neither self-intersection nor edges with four
 * faces, gtscheck no surface that is inside out. A file is sound only where both say so.
 */
export interface Verdict {
  /** Programs that ran. Empty where none is installed: then nothing is known of the file. */
  readonly ran: readonly string[];
  readonly notRun: readonly string[];
  /** What they found, in words; empty where they found nothing. */
  readonly faults: readonly string[];
  /** admesh's figures, where it ran. */
  readonly volume?: number;
  readonly parts?: number;
}

/** A program's answer on one file. */
interface Opinion {
  readonly faults: readonly string[];
  readonly volume?: number;
  readonly parts?: number;
}

const judges: Record<string, { readonly needs: readonly string[]; judge(path: string): Opinion }> = {
  admesh: { needs: ['admesh'], judge: askAdmesh },
  gtscheck: { needs: ['stl2gts', 'gtscheck'], judge: askGtscheck },
};

const installed = (program: string): boolean =>
  spawnSync(program, ['--help'], { stdio: 'ignore' }).error === undefined;

/** The judges this machine lacks. With CI=true a missing one is an error, since CI installs them. */
export function missingJudges(has: (program: string) => boolean = installed, ci = process.env.CI): string[] {
  const missing = Object.keys(judges).filter((name) => !judges[name].needs.every(has));
  if (missing.length > 0 && ci === 'true') {
    throw new Error(`CI must have ${missing.join(' and ')} to judge STL files (apt: admesh, libgts-bin)`);
  }
  return missing;
}

let missing: readonly string[] | undefined;

/** Asks every installed judge. Says on the terminal, once, which are not there and what so was not checked. */
export function judgeStl(path: string): Verdict {
  if (missing === undefined) {
    missing = missingJudges();
    if (missing.length > 0) console.warn(notRunText(missing));
  }
  const notRun = missing;
  const ran = Object.keys(judges).filter((name) => !notRun.includes(name));
  const opinions = ran.map((name) => judges[name].judge(path));
  return {
    ...Object.assign({}, ...opinions),
    ran,
    notRun,
    faults: opinions.flatMap(({ faults }) => faults),
  };
}

export const notRunText = (names: readonly string[]): string =>
  `Not run here, because not installed: ${names.join(', ')}. ` +
  'The STL files were not judged by it; only our own edge pairing looked at them. ' +
  'On Debian: apt install admesh libgts-bin.';

function askAdmesh(path: string): Opinion {
  // Its exit code is 0 for nearly anything, so its table is read. Counts are of what it had to do to the file.
  const { stdout, status } = spawnSync('admesh', [path], { encoding: 'utf8', env: plainEnglish() });
  if (status !== 0) return { faults: [`admesh: cannot read the file (exit ${status})`] };
  const faults: string[] = [];
  const mustBeNought = [
    'Total disconnected facets',
    'Degenerate facets',
    'Edges fixed',
    'Facets removed',
    'Facets added',
    'Facets reversed',
    'Backwards edges',
  ];
  for (const label of mustBeNought) {
    const count = numberAfter(stdout, `${label} +:`);
    if (count !== 0) faults.push(`admesh: ${label.toLowerCase()} ${count}`);
  }
  const volume = numberAfter(stdout, 'Volume +:');
  if (!(volume > 0 && Number.isFinite(volume))) faults.push(`admesh: volume ${volume}`);
  return { faults, volume, parts: numberAfter(stdout, 'Number of parts +:') };
}

function askGtscheck(path: string): Opinion {
  const folder = mkdtempSync(join(tmpdir(), 'judge-'));
  try {
    const surface = join(folder, 'surface.gts');
    const faces = numberOfFacets(path);
    if (pipe('stl2gts', [], path, surface).status !== 0) return { faults: ['stl2gts: cannot read the file'] };
    const { status, stderr } = pipe('gtscheck', ['-v'], surface, join(folder, 'crossings.gts'));
    const faults: string[] = [];
    if (status !== 0) faults.push(`gtscheck: ${exitMeaning[status ?? -1] ?? `ended with ${status}`}`);
    const boundary = numberAfter(stderr, 'boundary edges:');
    if (boundary !== 0) faults.push(`gtscheck: boundary edges ${boundary}`);
    const counted = numberAfter(stderr, ' faces:');
    if (counted !== faces) faults.push(`gtscheck: ${counted} faces of ${faces}`);
    return { faults };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** As its help text says. */
const exitMeaning: Record<number, string> = {
  1: 'not a valid surface file',
  2: 'not an orientable manifold',
  3: 'self-intersecting',
};

/** The count the file itself states (binary STL only). */
const numberOfFacets = (path: string): number => readFileSync(path).readUInt32LE(80);

function pipe(program: string, args: readonly string[], from: string, to: string) {
  const input = openSync(from, 'r');
  const output = openSync(to, 'w');
  try {
    return spawnSync(program, args, {
      stdio: [input, output, 'pipe'],
      encoding: 'utf8',
      env: plainEnglish(),
    });
  } finally {
    closeSync(input);
    closeSync(output);
  }
}

const plainEnglish = () => ({ ...process.env, LC_ALL: 'C' });

/** The first number after a label; NaN where there is none, so that nothing passes for zero. */
function numberAfter(text: string, label: string): number {
  const found = new RegExp(`${label}\\s*([-+0-9.eEnainf]+)`).exec(text);
  return found ? Number(found[1]) : Number.NaN;
}
