import { computed, signal } from '@preact/signals';
import { type Finding, type Report, worstFirst } from '../../findings/index.ts';
import type { Forecasts } from '../../trials/index.ts';
import type {
  ShownChannel,
  ShownFilling,
  ShownMesh,
  ShownMold,
  ShownSolid,
  ShownWalls,
  WithheldSolid,
} from '../worker/messages.ts';

// All that the page knows, in one place. Panels and scene layers read these signals and draw themselves anew when one
// changes; only actions.ts and the workers' answers (receive.ts) write the first group.

/** Where the plan came from: decides where its files are fetched from and where it can be saved to. */
type Origin = 'server' | 'preset' | 'dropped';

export interface OpenedPlan {
  readonly name: string;
  readonly text: string;
  readonly origin: Origin;
  readonly filesAt?: string;
  /** Hash of the file on disk this text came from; only from a server. */
  readonly hash?: string;
  /** The text as it was opened or saved last. */
  readonly kept: string;
}

export interface Step {
  readonly title: string;
  readonly done: number;
  readonly total: number;
}

/** The plan as opened or changed last; nothing before one is. */
export const plan = signal<OpenedPlan | undefined>(undefined);
/** Whether the text differs from what was opened or saved last. */
export const changed = computed(() => plan.value !== undefined && plan.value.text !== plan.value.kept);
export const mold = signal<ShownMold | undefined>(undefined);
export const masterMeshes = signal<ReadonlyMap<string, ShownMesh>>(new Map());
export const channels = signal<readonly ShownChannel[]>([]);
export const solids = signal<readonly ShownSolid[]>([]);
/** All that the picture is made of: read by whatever is to follow when other things are in it. */
export const pictured = computed(
  () => [mold.value, masterMeshes.value, channels.value, solids.value] as const,
);
/** Whether the solids are those of the present plan, or older ones still shown. */
export const solidsAreCurrent = signal(false);
export const report = signal<Report | undefined>(undefined);
/** Whether the report is the present plan's. */
export const reportIsCurrent = signal(false);
export const withheld = signal<readonly WithheldSolid[]>([]);
/** Names of the STL files of the last build. */
export const stls = signal<readonly string[]>([]);
/** How many flat things the last build has drawings of. */
export const drawings = signal(0);
/** Thickness of the walls, where it was asked for; of the present build, or nothing. */
export const walls = signal<ShownWalls | undefined>(undefined);
/** How the cavities fill, where it was asked for; of an older build until the new one is asked. */
export const filling = signal<readonly ShownFilling[] | undefined>(undefined);
/** Whether the filling is the present plan's. */
export const fillingIsCurrent = signal(false);
/** What is forecast of the present plan's cavities, to be held against trials; only where it was asked for. */
export const forecasts = signal<Forecasts | undefined>(undefined);
/** What is being computed; nothing when all is done. */
export const step = signal<Step | undefined>(undefined);
/** Why the plan could not be read: then mold and report are those before. */
export const unread = signal<readonly Finding[]>([]);
/** A fault of the program itself, or of the connection, in one line. */
export const fault = signal<string | undefined>(undefined);

/** Worst first; of a plan that cannot be read, only why. */
export const findings = computed<readonly Finding[]>(() =>
  worstFirst(unread.value.length > 0 ? unread.value : (report.value?.findings ?? [])),
);

/** Ids of what the person points at, in the picture, a bar or a row: all three show it. */
export const pointedAt = signal<string | undefined>(undefined);
/** Id of what was picked to be changed or looked at closely. */
export const picked = signal<string | undefined>(undefined);
/** Where the view is asked to fly to, mold frame, mm. */
export const flyTo = signal<readonly [number, number, number] | undefined>(undefined);
