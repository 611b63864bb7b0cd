import { layOut } from '../arrange/index.ts';
import { changeOf, proposeChannels, whyGate, whyWay } from '../fill/index.ts';
import type { Finding, Report } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { RankedLie } from '../mold/index.ts';
import {
  type Edited,
  freeName,
  leadsOut,
  limitDefaults,
  readPlan,
  type StarterOptions,
  type StarterPiece,
  starterPlan,
  usualHalf,
  writeArrangement,
  writeChannels,
} from '../plan/index.ts';
import { nextStock } from '../tables/index.ts';
import { checkMold } from './build.ts';
import type { FileAccess } from './files.ts';
import { type Inspection, inspectMesh } from './inspect.ts';
import type { Progress } from './progress.ts';
import { type MastersOutcome, type MoldOutcome, placeMold, readMasters } from './read-mold.ts';

export interface MeshFile {
  /** As the plan is to name it. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

export interface PlanWish extends Omit<StarterOptions, 'pieces' | 'halfThickness'> {
  /** How many of each master, by its name; left out, `each`, and else as many as fit. */
  readonly counts: ReadonlyMap<string, number>;
  readonly each?: number | undefined;
}

/** A whole plan, and what is to be said of it. */
export interface FirstPlan {
  readonly text: string;
  /** How many of each master lie on the disc. */
  readonly laid: readonly { readonly master: string; readonly count: number }[];
  /** What a person has to decide: files that are no masters, units guessed, what found no place, what stops a build. */
  readonly toDecide: readonly Finding[];
  readonly report?: Report;
}

/** Lies this much of the volume worse than the best are as good: the way a master was drawn is mostly meant. Our own choice. */
const asGood = 0.02;

/** From meshes to a plan that can be built: lies, halves, arrangement, gates, vents. Nothing is written. */
export async function planFromMeshes(
  meshes: readonly MeshFile[],
  wish: PlanWish,
  kernel: Kernel,
  progress: Progress = () => {},
): Promise<FirstPlan> {
  const names = mastersNamed(meshes);
  const looked: Looked[] = [];
  for (const [done, { path, bytes }] of meshes.entries()) {
    progress({ title: path, done, total: meshes.length });
    looked.push({ id: names[done], path, ...inspectMesh(bytes, path, kernel, { lie: true }) });
  }
  const usable = looked.flatMap((one) => pieceOf(one, wish) ?? []);
  const unusable = looked
    .filter(({ id }) => usable.every(({ piece }) => piece.id !== id))
    .flatMap(({ id, findings }) => findings.map((one) => ({ ...one, subject: id })))
    .filter(({ severity }) => severity === 'stop');
  const arranged = await arrangeAll(usable, { wish, meshes, kernel, progress });
  const { draft, laid } = arranged;
  const toDecide = [...unusable, ...arranged.toDecide];
  if (laid.length === 0) return { text: draft.text, laid, toDecide };
  await gate(draft, progress);
  progress({ title: 'checks', done: 0, total: 1 });
  const { mold, findings } = await draft.read();
  // Units are written into the plan, so that they are no longer guessed when it is read.
  const guessed = looked.flatMap(({ id, findings }) =>
    findings.filter(({ code }) => code === 'repair.unit-guessed').map((one) => ({ ...one, subject: id })),
  );
  if (!mold) return { text: draft.text, laid, toDecide: [...toDecide, ...guessed, ...findings] };
  const report = checkMold(mold, findings, kernel);
  const stops = report.findings.filter(({ severity }) => severity === 'stop');
  return { text: draft.text, laid, toDecide: [...toDecide, ...stops, ...guessed], report };
}

/** What the masters will be called, in the order of their files. */
export function mastersNamed(meshes: readonly Pick<MeshFile, 'path'>[]): string[] {
  const names: string[] = [];
  for (const { path } of meshes) names.push(freeName(path, new Set(names)));
  return names;
}

interface Setting {
  readonly wish: PlanWish;
  readonly meshes: readonly MeshFile[];
  readonly kernel: Kernel;
  readonly progress: Progress;
}

/** Lays all on the disc; what is larger than its room is left out and told. */
async function arrangeAll(
  all: readonly Usable[],
  { wish, meshes, kernel, progress }: Setting,
): Promise<Pick<FirstPlan, 'laid' | 'toDecide'> & { readonly draft: Draft }> {
  const pieces = all.map(({ piece }) => piece);
  const draft = new Draft(
    starterPlan({ ...wish, halfThickness: halfFor(all, wish), pieces }),
    meshes,
    kernel,
  );
  if (all.length === 0) return { draft, laid: [], toDecide: [] };
  const { plan, mold, findings } = await draft.read();
  if (!plan || !mold) return { draft, laid: [], toDecide: findings };
  let moves = 0;
  const onMove = () =>
    progress({ title: 'arrangement, moves', done: ++moves, total: Math.ceil((moves + 1) / 100) * 100 });
  const out = layOut(plan, mold, { onMove, forLarge: false });
  if (!out) throw new Error('planFromMeshes: the starter plan wishes for nothing');
  const large = new Set(
    out.findings.filter(({ code }) => code === 'arrange.too-large').map(({ subject }) => subject),
  );
  if (large.size > 0) {
    const rest = await arrangeAll(
      all.filter(({ piece }) => !large.has(piece.id)),
      { wish, meshes, kernel, progress },
    );
    return { ...rest, toDecide: [...out.findings, ...rest.toDecide] };
  }
  if (out.arranged) draft.edit(writeArrangement(draft.text, out.placements));
  const laid = pieces.map(({ id }) => ({
    master: id,
    count: out.placements.reduce((sum, { master, copies }) => sum + (master === id ? copies : 0), 0),
  }));
  return { draft, laid: laid.filter(({ count }) => count > 0), toDecide: out.findings };
}

/** Gates and vents by how each cavity fills, where the plan says enough to tell. */
async function gate(draft: Draft, progress: Progress): Promise<void> {
  const { plan, mold } = await draft.read();
  if (!plan || !mold) return;
  const proposed = proposeChannels(plan, mold, { progress });
  if ('missing' in proposed) return;
  const why = {
    gate: (one: Parameters<typeof whyGate>[0]) => whyGate(one, mold.units),
    way: (one: Parameters<typeof whyWay>[0]) => whyWay(one, mold.units),
  };
  draft.edit(writeChannels(draft.text, changeOf(plan, proposed, why)));
}

/** A plan's text on the way, with its masters, which are read once. */
class Draft {
  text: string;
  readonly #kernel: Kernel;
  readonly #files: FileAccess;
  #masters: MastersOutcome | undefined;

  constructor(text: string, meshes: readonly MeshFile[], kernel: Kernel) {
    this.text = text;
    this.#kernel = kernel;
    this.#files = async (name) => {
      const bytes = meshes.find(({ path }) => path === name)?.bytes;
      return bytes ? { bytes, name, outside: leadsOut(name) } : { fault: `there is no ${name}` };
    };
  }

  edit(edited: Edited): void {
    if (!('fault' in edited)) this.text = edited.text;
    else if (typeof edited.fault === 'string') throw new Error(`planFromMeshes: ${edited.fault}`);
    else throw new Error(`planFromMeshes: ${edited.fault.code} ${JSON.stringify(edited.fault.values)}`);
  }

  async read(): Promise<MoldOutcome> {
    const bytes = new TextEncoder().encode(this.text);
    this.#masters ??= await readMasters({ bytes, name: 'plan', files: this.#files }, this.#kernel);
    const { masters, findings: found } = this.#masters;
    const { plan, findings, units } = readPlan(this.text, 'plan');
    if (!plan || !masters) return { findings: [...findings, ...found], units };
    return placeMold(plan, masters, found);
  }
}

/** Thickness of a half, mm: as usual, or the thinnest stock that covers the deepest of them. */
function halfFor(all: readonly Usable[], { diameter }: PlanWish): number {
  const usual = usualHalf(diameter);
  const deepest = Math.max(0, ...all.map(({ lie }) => Math.max(lie.sink, lie.height - lie.sink)));
  const needed = deepest + limitDefaults.cover;
  return Math.max(usual, nextStock(needed)?.thickness ?? usual);
}

interface Looked extends Inspection {
  readonly id: string;
  readonly path: string;
}

interface Usable {
  readonly piece: StarterPiece;
  readonly lie: RankedLie;
}

function pieceOf(
  { id, path, mesh, measures, unit, findings, lies = [] }: Looked,
  { counts, each }: PlanWish,
) {
  const lie = bestLie(lies);
  if (!mesh || !measures || !unit || !lie) return undefined;
  const { min, max } = measures.bounds;
  const piece: StarterPiece = {
    id,
    file: path,
    unit,
    unitSaid: findings.every(({ code }) => code !== 'repair.unit-guessed'),
    lie: lie.asInFile ? undefined : lie,
    size: [max[0] - min[0], max[1] - min[1], max[2] - min[2]],
    undercut: lie.share,
    count: counts.get(id) ?? each ?? 'as many as fit',
  };
  return { piece, lie };
}

/** As in the file, where that is about as good as the best; else the best. */
function bestLie(lies: readonly RankedLie[]): RankedLie | undefined {
  const least = Math.min(...lies.map(({ share }) => share));
  return lies.find(({ asInFile, share }) => asInFile && share <= least + asGood) ?? lies[0];
}
