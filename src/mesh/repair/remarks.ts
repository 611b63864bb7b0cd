import { type CodeValues, type Finding, type FindingCode, findingWith } from '../../findings/index.ts';
import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';
import type { ClosedTopology } from './close-topology.ts';
import type { CutOut } from './cut-crossings.ts';
import type { Deviation } from './deviation.ts';
import type { FacedOutward } from './face-outward.ts';
import type { MendedCrossings } from './mend-crossings.ts';
import type { RemeshTooLong } from './remesh.ts';
import type { United } from './unite-shells.ts';

type RepairCode = Extract<FindingCode, `repair.${string}`>;
/** What a finding says besides the count. */
type Said<C extends RepairCode> = Omit<CodeValues<C>, 'measured'> & { readonly measured?: number };

/** What a closed skin fails by: the kernel refuses it, or it crosses itself. */
export type ProvenFault =
  | { readonly which: 'refused'; readonly fault: string }
  | {
      readonly which: 'crosses';
      readonly wrong: number;
      readonly columns: number;
      readonly wrongVolume: number;
    };

/** Why a skin cannot stay as it is. */
export type SkinFault =
  | ProvenFault
  | { readonly which: 'open'; readonly open: number; readonly crowded: number };

type NothingAnew = Pick<
  CodeValues<'repair.not-solid'>,
  'anew' | 'strayed' | 'anewFault' | 'anewWrong' | 'anewColumns' | 'anewVolume'
>;

/** Collects what was done to one mesh: a finding for each kind of repair, with its count and a place. */
export class Remarks {
  readonly findings: Finding[] = [];
  readonly counts: Record<string, number> = {};
  /** Farthest any surface is known to have been moved, mm. */
  deviation = 0;
  /** Edge length of a surface made anew, mm. */
  remeshEdge: number | undefined;

  constructor(private readonly subject: string) {}

  /** Notes `count` repairs of a kind; none gives no finding. `measured` is the count where nothing else is said. */
  say<C extends RepairCode>(code: C, count: number, said: Said<C>, place?: Vec3): void {
    if (count === 0) return;
    const kind = code.replace('repair.', '');
    this.counts[kind] = (this.counts[kind] ?? 0) + count;
    // That these are all the values that the code gives is known only where the code is.
    const values = { measured: count, ...said } as unknown as CodeValues<C>;
    this.findings.push(findingWith(code, values, { subject: this.subject, ...(place && { place }) }));
  }

  /** A stop; gives undefined, so that it can be returned where a mesh would be. */
  stop<C extends RepairCode>(code: C, said: Said<C>, place?: Vec3): undefined {
    this.say(code, 1, said, place);
    return undefined;
  }

  closed({
    joined,
    collapsed,
    doubled,
    reoriented,
    nonManifold,
    slivers,
    holes,
    openBefore,
  }: Omit<ClosedTopology, 'mesh' | 'pairs'>): void {
    this.say('repair.points-joined', joined.count, { size: joined.size }, joined.place);
    this.say(
      'repair.faces-dropped',
      collapsed.count + doubled.count,
      { collapsed: collapsed.count, doubled: doubled.count },
      doubled.place ?? collapsed.place,
    );
    this.say('repair.faces-turned', reoriented.count, {}, reoriented.place);
    this.say('repair.edges-split', nonManifold.count, {}, nonManifold.place);
    this.say('repair.slivers-turned', slivers.count, {}, slivers.place);
    if (holes) {
      const { closed, added, area, widest, farthest, place } = holes;
      const said = { openEdges: openBefore, added, area, widest, farthest };
      this.say('repair.holes-closed', closed, said, place);
    }
    this.deviation = Math.max(this.deviation, joined.size, holes?.farthest ?? 0);
  }

  faced({ flipped, cavities, place }: FacedOutward): void {
    this.say('repair.inside-out', flipped, {}, place);
    this.say('repair.cavity', cavities, {});
  }

  united({ united, overlap, place }: United): void {
    this.say('repair.shells-united', united, { overlap }, place);
  }

  cut(cuts: readonly CutOut[]): void {
    const faces = cuts.reduce((sum, { cut }) => sum + cut, 0);
    const added = cuts.reduce((sum, { spanned }) => sum + spanned.added, 0);
    const area = cuts.reduce((sum, { spanned }) => sum + spanned.area, 0);
    const farthest = cuts.reduce((most, { spanned }) => Math.max(most, spanned.farthest), 0);
    this.say('repair.crossings-cut', faces, { added, area, farthest }, cuts[0]?.place);
    this.deviation = Math.max(this.deviation, farthest);
  }

  /** What is left crosses by `deepest` mm at most. */
  uncrossed({ mesh, moved, farthest, left }: Omit<MendedCrossings, 'cuts'>): void {
    this.say('repair.crossings-drawn-apart', moved, { farthest });
    this.deviation = Math.max(this.deviation, farthest);
    const deepest = left.reduce((most, { depth }) => Math.max(most, depth), 0);
    const place = left[0] && pointOf(mesh, left[0].corner);
    this.say('repair.crossings-left', left.length, { deepest }, place);
  }

  smallComponents(count: number, place?: Vec3): void {
    this.say('repair.specks-dropped', count, {}, place);
  }

  remeshed({ fault, edge, before, after, kept, added }: RemeshFigures, place?: Vec3): void {
    this.remeshEdge = edge;
    this.deviation = Math.max(kept.greatest, added.greatest);
    const said = {
      ...fault,
      measured: this.deviation,
      edge,
      volumeBefore: before.volume,
      volumeAfter: after.volume,
      areaBefore: before.area,
      areaAfter: after.area,
      kept: kept.greatest,
      keptRms: kept.rms,
      added: added.greatest,
    };
    this.say('repair.remeshed', 1, said, place ?? kept.place);
  }

  /** No skin: that of the file has a fault, and of one made anew nothing came either. */
  notSolid(fault: SkinFault, anew: NothingAnew, place?: Vec3): undefined {
    return this.stop('repair.not-solid', { ...fault, ...anew }, place);
  }

  /** No skin: that of the file has a fault, and one made anew with edges of `edge` mm takes more work than it may. */
  remeshTooLong(fault: SkinFault, edge: number, tooLong: RemeshTooLong, place?: Vec3): undefined {
    const { takes, measured, limit } = tooLong;
    return this.stop('repair.remesh-too-long', { ...fault, edge, takes, measured, limit }, place);
  }

  bodies(count: number): void {
    if (count > 1) this.say('repair.several-bodies', count, {});
  }
}

const pointOf = ({ positions }: TriangleMesh, vertex: number): Vec3 => [
  positions[vertex * 3],
  positions[vertex * 3 + 1],
  positions[vertex * 3 + 2],
];

/** What a new surface is compared by: mm, mm2, mm3; deviations of the old from the new and of the new from the old. */
export interface RemeshFigures {
  /** Of the skin that was given up. */
  readonly fault: SkinFault;
  readonly edge: number;
  readonly before: { readonly volume: number; readonly area: number };
  readonly after: { readonly volume: number; readonly area: number };
  readonly kept: Deviation;
  readonly added: Deviation;
}
