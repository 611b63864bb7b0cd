import type { Errand, FromWorker, Held, KeepFile, OpenPlan, ToOven, ToTable } from './messages.ts';
import { startOven, startTable } from './start-workers.ts';

/** How long a worker may take to leave off before it is ended, ms. */
const patience = 350;

/**
 * The page's end of the two workers. Each `open` is an edit with a number; answers to older edits are not passed on.
 */
export class Bench {
  private readonly table = startTable();
  private oven = startOven();
  private edit = 0;
  /** The edit on the table; what was left off in the oven does not change it. */
  private opened = 0;
  private ovenIsBusy = false;
  /** Whether something is wanted of the finished build. */
  private errands = 0;

  constructor(private readonly hear: (message: FromWorker) => void) {
    this.listen(this.table);
    this.introduce(false);
  }

  /** Reads, lays out, checks and builds a plan; what is still being done for an older one is left off. */
  open(plan: Omit<OpenPlan, 'kind' | 'edit'>): number {
    const edit = ++this.edit;
    this.opened = edit;
    if (this.ovenIsBusy) this.leaveOff(edit);
    this.ovenIsBusy = true;
    this.errands = 0;
    this.toTable({ kind: 'open', edit, ...plan });
    return edit;
  }

  /** Asks for the walls and covers of one thing, as laid out last. */
  near(ask: number, id: string, held?: Held): void {
    this.toTable({ kind: 'near', edit: this.opened, ask, id, ...(held && { held }) });
  }

  /** Hands over a file the plan may name. */
  keep(file: Omit<KeepFile, 'kind'>): void {
    this.toTable({ kind: 'keep', ...file });
  }

  /** Files are fetched anew: they may have changed where they came from. */
  forget(): void {
    this.toTable({ kind: 'forget' });
  }

  /** Leaves off what is being done; what has come already stays. */
  cancel(): void {
    if (!this.ovenIsBusy && this.errands > 0) {
      this.errands = 0;
      this.toOven({ kind: 'drop' });
      return;
    }
    this.edit++;
    // Else it would still hand over what it is reading.
    this.toTable({ kind: 'leave', edit: this.edit });
    if (this.ovenIsBusy) this.replaceOven(false);
    this.ovenIsBusy = false;
  }

  /** Asks for files of the present build, or for its walls. */
  errand(wanted: Omit<Extract<Errand, { kind: 'take' }>, 'edit'> | { readonly kind: 'walls' }): void {
    this.errands++;
    this.toOven({ ...wanted, edit: this.edit });
  }

  private leaveOff(edit: number): void {
    const oven = this.oven;
    const timer = setTimeout(() => {
      if (this.oven === oven) this.replaceOven(true);
    }, patience);
    oven.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'left' && data.edit >= edit) clearTimeout(timer);
    });
    this.toOven({ kind: 'leave', edit });
  }

  private replaceOven(goOn: boolean): void {
    this.oven.terminate();
    this.oven = startOven();
    this.introduce(goOn);
  }

  /** Gives table and oven a line to each other, so that meshes need not pass through the page. */
  private introduce(goOn: boolean): void {
    this.listen(this.oven);
    const { port1, port2 } = new MessageChannel();
    this.table.postMessage({ kind: 'meet', port: port1, goOn } satisfies ToTable, [port1]);
    this.oven.postMessage({ kind: 'meet', port: port2, goOn } satisfies ToOven, [port2]);
  }

  private listen(worker: Worker): void {
    worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (!this.isWanted(data)) return;
      // What was dropped may have said one step more.
      if (data.kind === 'step' && !this.ovenIsBusy && this.errands === 0) return;
      const isDone = data.kind === 'taken' || data.kind === 'walls' || data.kind === 'fault';
      if (isDone && this.errands > 0) this.errands--;
      if (data.kind === 'built' || data.kind === 'unread') this.ovenIsBusy = false;
      this.hear(data);
    });
    worker.addEventListener('error', (event) => {
      this.hear({ kind: 'fault', edit: this.edit, says: event.message || 'a worker could not be started' });
    });
  }

  private isWanted({ kind, edit }: FromWorker): boolean {
    // A master's picture is sent once, and stays right for the edits after it.
    if (kind === 'master') return true;
    return edit === (kind === 'near' ? this.opened : this.edit);
  }

  private toTable(message: ToTable): void {
    this.table.postMessage(message);
  }

  private toOven(message: ToOven): void {
    this.oven.postMessage(message);
  }
}
