import type { Kernel } from '../../kernel/index.ts';
import {
  type Cache,
  type FileAccess,
  loadKey,
  loadMesh,
  type MeshOutcome,
  meshToLoad,
} from '../../pipeline/index.ts';
import { expandPlacements, type Plan } from '../../plan/index.ts';
import type { Loaded, LoadRequest } from './messages.ts';
import { mostTriangles, shownMesh } from './reduce.ts';
import { Outdated, send, yieldToEvents } from './send.ts';

/** What is to be loaded for an edit: its source, the master it is of, and how many triangles its picture may have. */
export type Loading = Pick<LoadRequest, 'edit' | 'id' | 'source' | 'most'>;

/** Loads a master and sends its picture to the page. */
export function loadAndShow({ edit, id, source, most }: Loading, kernel: Kernel): MeshOutcome {
  const outcome = loadMesh(source, kernel);
  if (outcome.mesh) {
    const mesh = shownMesh(outcome.mesh, most, kernel);
    send({ kind: 'master', edit, master: { id, mesh } }, [mesh]);
  }
  return outcome;
}

/** The build worker as seen from the layout worker: it has nothing else to do while masters are loaded for the first time. */
export class Helper {
  private port: MessagePort | undefined;
  private asked = 0;
  private readonly waiting = new Map<number, (outcome: MeshOutcome | undefined) => void>();

  /** Whoever was there before was ended, with all it had been asked. */
  connect(port: MessagePort): void {
    for (const done of this.waiting.values()) done(undefined);
    this.waiting.clear();
    this.port = port;
    port.onmessage = ({ data }: MessageEvent<Loaded>) => {
      this.waiting.get(data.ask)?.(data.outcome);
      this.waiting.delete(data.ask);
    };
  }

  /** Undefined where it was not done. */
  load(loading: Loading): Promise<MeshOutcome | undefined> {
    const { port } = this;
    if (!port) return Promise.resolve(undefined);
    const ask = ++this.asked;
    port.postMessage({ kind: 'load', ask, ...loading } satisfies LoadRequest);
    return new Promise((resolve) => this.waiting.set(ask, resolve));
  }
}

export interface Together {
  readonly edit: number;
  readonly files: FileAccess;
  readonly cache: Cache;
  readonly helper: Helper;
  readonly kernel: Kernel;
  isLatest(): boolean;
  /** What this worker has to do before it starts with its share. */
  readonly first: Promise<void>;
  /** Told of each master whose picture is on its way. */
  shown(id: string, mesh: NonNullable<MeshOutcome['mesh']>): void;
}

/** Loads the masters of a plan in both workers and leaves them in the cache, where the core looks for them. */
export async function loadTogether(plan: Plan, together: Together): Promise<void> {
  const { cache, helper, kernel, isLatest, first } = together;
  const left = await loadings(plan, together);
  const total = left.length + 1;
  let done = 0;
  const keep = ({ edit, id, source }: Loading, outcome: MeshOutcome): void => {
    cache.memoize(loadKey(source), () => outcome);
    if (outcome.mesh) together.shown(id, outcome.mesh);
    send({ kind: 'step', edit, title: `master ${id}`, done: ++done, total });
  };
  // A master is looked up only when its turn comes: until then nobody waits for it.
  const next = (end: 'shift' | 'pop'): Loading | undefined => {
    let one = left[end]();
    while (one && cache.has(loadKey(one.source))) one = left[end]();
    return one;
  };
  const here = async (): Promise<void> => {
    await first;
    for (let one = next('shift'); one; one = next('shift')) {
      keep(one, loadAndShow(one, kernel));
      await yieldToEvents();
      if (!isLatest()) throw new Outdated();
    }
  };
  const there = async (): Promise<void> => {
    for (let one = next('pop'); one; one = next('pop')) {
      const outcome = await helper.load(one);
      if (!isLatest()) throw new Outdated();
      if (outcome) keep(one, outcome);
      else {
        left.push(one);
        return;
      }
    }
  };
  // Two at a time are with the helper, so that it need not wait for this worker to come to a stop.
  await Promise.all([here(), there(), there()]);
  // What came back undone after this worker had finished its share.
  await here();
}

/** The masters that have a mesh file that can be had; what is wrong with others is the core's to say. */
async function loadings(plan: Plan, { edit, files }: Together): Promise<Loading[]> {
  const most = mostTriangles(expandPlacements(plan).length);
  const found = Object.entries(plan.masters ?? {}).map(async ([id, spec]): Promise<Loading[]> => {
    if (spec.kind !== 'mesh') return [];
    const file = await files(spec.file);
    if ('fault' in file) return [];
    return [{ edit, id, source: meshToLoad(id, spec, file.bytes), most }];
  });
  return (await Promise.all(found)).flat();
}
