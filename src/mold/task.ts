import type { Finding, ReportPart } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { Drawing } from './drawing.ts';
import type { Memoize } from './memoize.ts';
import type { Mold, Process } from './mold.ts';
import type { Solid } from './solid.ts';

/** What a part or a check gets besides its input. */
export interface Tools {
  readonly kernel: Kernel;
  /** Spares what several tasks find from the same data; without it each finds it anew. */
  readonly memoize?: Memoize;
  /** Only what is near is asked about: walls beyond twice their limit need not be found. */
  readonly nearOnly?: boolean;
}

/**
 * One unit of a task. `input` is all it may look at, and so is also the key under which its result is cached: it must
 * be plain data. `subject` is what is named where it cannot be done.
 */
interface Unit<I> {
  readonly subject: string;
  /** Ids of what on the disc it is about: a placement, both of a pair, a fixture; none for the mold as a whole. */
  readonly about: readonly string[];
  readonly input: I;
}

export interface Definition<I, O> {
  readonly id: string;
  readonly title: string;
  readonly processes: readonly Process[];
  /** The units there are for this mold: none, one, or one for each subject. */
  units(mold: Mold): readonly Unit<I>[];
  run(input: I, tools: Tools): O;
}

/** A definition with its input type closed over, so that different tasks stand in one list. */
export interface Task<O> {
  readonly id: string;
  readonly title: string;
  readonly processes: readonly Process[];
  units(mold: Mold): readonly (Unit<unknown> & { run(tools: Tools): O })[];
}

export function task<I, O>(definition: Definition<I, O>): Task<O> {
  const { id, title, processes } = definition;
  return {
    id,
    title,
    processes,
    units: (mold) =>
      processes.includes(mold.process)
        ? definition
            .units(mold)
            .map((unit) => ({ ...unit, run: (tools) => definition.run(unit.input, tools) }))
        : [],
  };
}

/** What a part gives: its solids, flat things as drawings, and what had to be left out of them. */
export interface PartOutput {
  readonly solids: readonly Solid[];
  readonly drawings?: readonly Drawing[];
  readonly findings: readonly Finding[];
}

/** A kind of solid the user can ask for. Throws KernelFault where no solid can be made. */
export interface Part extends Task<PartOutput> {
  /** Whether it is of use in this mold, and so made where nobody asks for it by name. Left out, always. */
  readonly unasked?: (mold: Mold) => boolean;
}

/** A part that leaves nothing out: its run gives just the solids. */
export const part = <I>(definition: Definition<I, readonly Solid[]>): Part =>
  task({ ...definition, run: (input, tools) => ({ solids: definition.run(input, tools), findings: [] }) });

/** A check. */
export interface Check extends Task<ReportPart> {
  /**
   * Whether it is asked, unit by unit, about what is being dragged while it is dragged: it has to be quick then, and may
   * hang on nothing that is found anew only when all is.
   */
  readonly follows: boolean;
}

export const check = <I>(definition: Definition<I, ReportPart> & Pick<Check, 'follows'>): Check => ({
  ...task(definition),
  follows: definition.follows,
});
