import type { Finding, Report, UnitSystem } from '../../findings/index.ts';
import type { Matrix4, Point2 } from '../../geometry/index.ts';
import type { SolidRole } from '../../kinds/index.ts';
import type { Master, Mold } from '../../mold/index.ts';
import type { MastersOutcome, MeshOutcome, MeshToLoad, Near } from '../../pipeline/index.ts';
import type { ChannelName, ItemName, WayPoint } from '../../plan/index.ts';
import type { Forecasts } from '../../trials/index.ts';
import type { FillGrid } from './fill-grid.ts';

// What the page and its two workers say to each other. Every message of work carries the number of the edit it
// belongs to; an answer to an older edit is thrown away by whoever gets it. Meshes are transferred, not copied.
//
// The layout worker reads the plan, loads the masters and places them. The build worker does what takes long: parting surface,
// checks, solids. When a newer edit comes while the build worker is in the middle of a long step, it is ended and a new one
// takes its place: the masters stay with the layout worker.

export interface OpenPlan {
  readonly kind: 'open';
  readonly edit: number;
  readonly text: string;
  readonly name: string;
  /** Nothing of an earlier plan is shown: what can be shown at once is wanted. */
  readonly fresh: boolean;
  /** Where the plan's files are fetched from: an address that the file's path is put behind. */
  readonly filesAt?: string;
}

/** A file the person gave, kept under its name until another of that name comes. */
export interface KeepFile {
  readonly kind: 'keep';
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Where a thing is while it is dragged: its name, and the way from where the plan has it, mold frame. */
export interface Dragged {
  readonly kind: ItemName['kind'];
  readonly id: string;
  readonly matrix: Matrix4;
}

/** Asks for walls and covers of one thing, dragged somewhere or, without `dragged`, where it lies. */
export interface AskNear {
  readonly kind: 'near';
  readonly edit: number;
  readonly ask: number;
  readonly id: string;
  readonly dragged?: Dragged;
}

interface Connect {
  readonly kind: 'connect';
  readonly port: MessagePort;
  /** Whether what the build worker before it had in its hands is to be done by this one. */
  readonly goOn: boolean;
}

/** A newer edit has come, or what is being done is not wanted any more: leave off. The build worker answers with `left`. */
interface Leave {
  readonly kind: 'leave';
  readonly edit: number;
}

export type ToLayoutWorker = OpenPlan | KeepFile | { readonly kind: 'forget' } | AskNear | Connect | Leave;

/** From the layout worker straight to the build worker. */
export interface BuildRequest {
  readonly kind: 'build';
  readonly edit: number;
  readonly planBytes: Uint8Array;
  readonly plan: NonNullable<MastersOutcome['plan']>;
  readonly masters: readonly Master[];
  readonly findings: readonly Finding[];
}

/** From the layout worker to the build worker while that has nothing to build: a master to be loaded. Answered with `Loaded`. */
export interface LoadRequest {
  readonly kind: 'load';
  readonly edit: number;
  readonly ask: number;
  readonly id: string;
  readonly source: MeshToLoad;
  /** Triangles its picture may have. */
  readonly most: number;
}

/** Without an outcome where a newer edit had come. */
export interface Loaded {
  readonly ask: number;
  readonly outcome?: MeshOutcome;
}

/** How a gate or vent would run, and what it would do, if it were moved. */
export interface TryChannel {
  readonly kind: 'try';
  readonly edit: number;
  readonly ask: number;
  readonly name: ChannelName;
  /** As the mold names it. */
  readonly id: string;
  /** Where it is to open into the cavity, mold frame, mm. */
  readonly entry?: Point2;
  readonly through?: readonly WayPoint[];
}

/** Answered from the mold that was placed last; without one, or where it has no room for its bends, there is no run. */
export interface TriedChannel {
  readonly ask: number;
  readonly id: string;
  readonly placement: string;
  /** The place of the outline nearest to where it was wanted, mold frame; in the master's own frame too. */
  readonly entry?: { readonly at: Point2; readonly own: { readonly x: number; readonly y: number } };
  readonly run?: readonly Point2[];
  /** Whether it keeps its walls to all else. */
  readonly isFree: boolean;
  readonly filling?: ShownFilling;
  readonly air?: readonly TriedAir[];
  /** What finding it took, ms. */
  readonly took: number;
}

/** Air that would stay. */
interface TriedAir {
  readonly stays: 'all' | 'some';
  readonly volumes: readonly [number, number];
  readonly place: readonly [number, number, number];
  readonly where: string;
  readonly sealed: string;
}

/** The plan's text with the gates and vents that are proposed, or why there are none. */
export interface ProposedText {
  readonly text?: string;
  readonly fault?: string | Finding;
  /** How many, and the air under the usual assumption in all these cavities with the plan's own and with them, mm3. */
  readonly gates: number;
  readonly vents: number;
  readonly before: number;
  readonly after: number;
}

export type ToBuildWorker =
  | TryChannel
  | Connect
  | Leave
  | BuiltRequest
  /** Leave off the errands asked for so far; the build stays. */
  | { readonly kind: 'cancel' };

/** Something wanted of the finished build. */
export type BuiltRequest =
  /** Files of these formats, or of all that a build leaves; of them one alone where it is named. */
  | {
      readonly kind: 'files';
      readonly edit: number;
      readonly formats?: readonly string[];
      readonly file?: string;
    }
  /** The thickness of the walls round every cavity. */
  | { readonly kind: 'walls'; readonly edit: number }
  /** The order in which metal comes to the places of every cavity. */
  | { readonly kind: 'filling'; readonly edit: number }
  /** What is forecast of each cavity, to be held against trials. */
  | { readonly kind: 'told'; readonly edit: number }
  /** Gates and vents for one placement and its like, or for all. */
  | { readonly kind: 'propose'; readonly edit: number; readonly only?: string };

/** A mesh for the picture, nine numbers a face: reduced where it had to be, by at most `error` mm. */
export interface ShownMesh {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly error: number;
  /** Triangles before it was reduced. */
  readonly full: number;
}

export interface ShownMaster {
  readonly id: string;
  readonly mesh: ShownMesh;
}

/** A mold without the meshes: the masters' come by themselves, and the parting surface is in the solids. */
export type ShownMold = Omit<Mold, 'masters' | 'parting'> & {
  readonly masters: readonly Omit<Master, 'mesh'>[];
};

export interface ShownSolid {
  readonly id: string;
  readonly title: string;
  readonly role: SolidRole;
  readonly subjects: readonly string[];
  readonly toMold: Matrix4;
  readonly mesh: ShownMesh;
}

/** A gate or vent as it is cut, in the mold frame. */
export interface ShownChannel {
  readonly id: string;
  readonly half: 'lower' | 'upper';
  readonly mesh: ShownMesh;
}

/** What a cavity's wall is colored by: a distance (mm) for each corner of its master's mesh. */
export interface ShownWall {
  /** Id of the placement. */
  readonly subject: string;
  readonly master: string;
  readonly distances: Float32Array;
}

/** Walls of all cavities; the meshes are those the distances count the corners of. */
export interface ShownWalls {
  readonly meshes: readonly ShownMaster[];
  readonly walls: readonly ShownWall[];
}

/** The order in which a cavity fills; its grid lies in the mold frame turned back by `turnRad`. Like cavities share one. */
export interface ShownFilling {
  /** Id of the placement. */
  readonly subject: string;
  readonly turnRad: number;
  readonly grid: FillGrid;
}

export interface WithheldSolid {
  readonly title: string;
  readonly reasons: readonly Finding[];
}

type About<T> = T & { readonly edit: number };

export type FromWorker =
  | About<{ readonly kind: 'step'; readonly title: string; readonly done: number; readonly total: number }>
  | About<{ readonly kind: 'master'; readonly master: ShownMaster }>
  /** Placed; the parting surface is still to come, and where it is not `complete`, the masters too. */
  | About<{ readonly kind: 'laid'; readonly mold: ShownMold; readonly complete: boolean }>
  /** Gates and vents: first hung from the parting plane, later from the true surface. */
  | About<{ readonly kind: 'channels'; readonly channels: readonly ShownChannel[] }>
  /** Found on reduced masters, off by at most `error` mm; 0 where they are whole. */
  | About<
      {
        readonly kind: 'near';
        readonly ask: number;
        readonly id: string;
        readonly error: number;
        /** What finding them took, ms. */
        readonly took: number;
      } & Near
    >
  | About<{ readonly kind: 'unread'; readonly findings: readonly Finding[]; readonly units: UnitSystem }>
  /** Rims, bosses, sprue form and the like, and later all. `complete`: nothing more will come. */
  | About<{ readonly kind: 'solids'; readonly solids: readonly ShownSolid[]; readonly complete: boolean }>
  | About<{ readonly kind: 'report'; readonly report: Report }>
  | About<{
      readonly kind: 'built';
      readonly report: Report;
      readonly withheld: readonly WithheldSolid[];
      /** Names of the STL files there are to be had. */
      readonly stls: readonly string[];
      /** How many flat things there are drawings of. */
      readonly drawings: number;
    }>
  | About<{ readonly kind: 'files'; readonly bytes: Uint8Array; readonly name: string }>
  | About<{ readonly kind: 'walls'; readonly walls: ShownWalls }>
  | About<{ readonly kind: 'filling'; readonly cavities: readonly ShownFilling[] }>
  | About<{ readonly kind: 'told'; readonly forecasts: Forecasts }>
  | About<{ readonly kind: 'tried' } & TriedChannel>
  | About<{ readonly kind: 'proposed' } & ProposedText>
  | About<{ readonly kind: 'left' }>
  | About<{ readonly kind: 'fault'; readonly says: string }>;
