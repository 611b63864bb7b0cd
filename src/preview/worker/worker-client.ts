import type {
  BuiltRequest,
  Dragged,
  FromWorker,
  KeepFile,
  OpenPlan,
  ToBuildWorker,
  ToLayoutWorker,
  TryChannel,
} from './messages.ts';
import { startBuildWorker, startLayoutWorker } from './start-workers.ts';

type WithoutEdit<T> = T extends unknown ? Omit<T, 'edit'> : never;

/** What ends a request. */
const answers: ReadonlySet<FromWorker['kind']> = new Set([
  'files',
  'walls',
  'filling',
  'told',
  'proposed',
  'fault',
]);

/** How long a worker may take to leave off before it is ended, ms. */
const patience = 350;

/**
 * The page's end of the two workers. Each `open` is an edit with a number; answers to older edits are not passed on.
 */
export class WorkerClient {
  private readonly layoutWorker = startLayoutWorker();
  private buildWorker = startBuildWorker();
  private edit = 0;
  /** The edit with the layout worker; what was left off in the build worker does not change it. */
  private opened = 0;
  private isBuilding = false;
  /** What is wanted of the finished build, in the order it is answered. */
  private requests: BuiltRequest['kind'][] = [];

  constructor(private readonly receive: (message: FromWorker) => void) {
    this.listen(this.layoutWorker);
    this.connect(false);
  }

  /** Reads, lays out, checks and builds a plan; what is still being done for an older one is left off. */
  open(plan: Omit<OpenPlan, 'kind' | 'edit'>): number {
    const edit = ++this.edit;
    this.opened = edit;
    if (this.isBuilding || this.isInLongStep()) this.leaveOff({ kind: 'leave', edit });
    this.isBuilding = true;
    this.requests = [];
    this.toLayoutWorker({ kind: 'open', edit, ...plan });
    return edit;
  }

  /** Asks for the walls and covers of one thing, as laid out last. */
  near(ask: number, id: string, dragged?: Dragged): void {
    this.toLayoutWorker({ kind: 'near', edit: this.opened, ask, id, ...(dragged && { dragged }) });
  }

  /** Hands over a file the plan may name. */
  keep(file: Omit<KeepFile, 'kind'>): void {
    this.toLayoutWorker({ kind: 'keep', ...file });
  }

  /** Files are fetched anew: they may have changed where they came from. */
  forget(): void {
    this.toLayoutWorker({ kind: 'forget' });
  }

  /** Leaves off what is being done; what has come already stays. */
  cancel(): void {
    if (!this.isBuilding && this.requests.length > 0) {
      const isLong = this.isInLongStep();
      this.requests = [];
      // Ended it has to build again, which takes longer than any step but this: what is shown stays meanwhile.
      if (isLong) this.leaveOff({ kind: 'cancel' });
      else this.toBuildWorker({ kind: 'cancel' });
      return;
    }
    this.edit++;
    // Else it would still hand over what it is reading.
    this.toLayoutWorker({ kind: 'leave', edit: this.edit });
    if (this.isBuilding) this.replaceBuildWorker(false);
    this.isBuilding = false;
  }

  /** Asks for files of the present build, for its walls, how it fills, or for gates and vents. */
  request(wanted: WithoutEdit<BuiltRequest>): void {
    this.requests.push(wanted.kind);
    this.toBuildWorker({ ...wanted, edit: this.edit });
  }

  /** Asks what a gate or vent would do elsewhere, of the mold as it is placed now. */
  tryChannel(wanted: Omit<TryChannel, 'kind' | 'edit'>): void {
    this.toBuildWorker({ kind: 'try', edit: this.edit, ...wanted });
  }

  /** Proposals are one step, of seconds and more. */
  private isInLongStep(): boolean {
    return this.requests[0] === 'propose';
  }

  private leaveOff(message: Extract<ToBuildWorker, { kind: 'leave' | 'cancel' }>): void {
    const { buildWorker, edit } = this;
    const timer = setTimeout(() => {
      if (this.buildWorker !== buildWorker) return;
      this.isBuilding = true;
      this.replaceBuildWorker(true);
    }, patience);
    buildWorker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'left' && data.edit >= edit) clearTimeout(timer);
    });
    this.toBuildWorker(message);
  }

  private replaceBuildWorker(goOn: boolean): void {
    this.buildWorker.terminate();
    this.buildWorker = startBuildWorker();
    this.connect(goOn);
  }

  /** Gives both workers a line to each other, so that meshes need not pass through the page. */
  private connect(goOn: boolean): void {
    this.listen(this.buildWorker);
    const { port1, port2 } = new MessageChannel();
    this.layoutWorker.postMessage({ kind: 'connect', port: port1, goOn } satisfies ToLayoutWorker, [port1]);
    this.buildWorker.postMessage({ kind: 'connect', port: port2, goOn } satisfies ToBuildWorker, [port2]);
  }

  private listen(worker: Worker): void {
    worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (!this.isWanted(data)) return;
      // What was canceled may have said one step more.
      if (data.kind === 'step' && !this.isBuilding && this.requests.length === 0) return;
      if (answers.has(data.kind)) this.requests.shift();
      if (data.kind === 'built' || data.kind === 'unread') this.isBuilding = false;
      this.receive(data);
    });
    worker.addEventListener('error', (event) => {
      this.receive({
        kind: 'fault',
        edit: this.edit,
        says: event.message || 'a worker could not be started',
      });
    });
  }

  private isWanted({ kind, edit }: FromWorker): boolean {
    // A master's picture is sent once, and stays right for the edits after it.
    if (kind === 'master') return true;
    return edit === (kind === 'near' ? this.opened : this.edit);
  }

  private toLayoutWorker(message: ToLayoutWorker): void {
    this.layoutWorker.postMessage(message);
  }

  private toBuildWorker(message: ToBuildWorker): void {
    this.buildWorker.postMessage(message);
  }
}
