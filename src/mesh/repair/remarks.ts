import { counted, type Finding, type FindingCode, finding, type Measured } from '../../findings/index.ts';
import type { Vec3 } from '../../kernel/index.ts';
import type { CutOut } from './cut-crossings.ts';
import type { Deviation } from './deviation.ts';
import type { FacedOutward } from './face-outward.ts';
import type { Mend } from './mend.ts';
import type { United } from './unite-shells.ts';

/** Collects what was done to one mesh: a finding for each kind of repair, with its count and a place. */
export class Remarks {
  readonly findings: Finding[] = [];
  readonly counts: Record<string, number> = {};
  /** Farthest any surface is known to have been moved, mm. */
  deviation = 0;
  /** Edge length of a surface made anew, mm. */
  remeshEdge: number | undefined;

  constructor(private readonly subject: string) {}

  /** Notes `count` repairs of a kind; none gives no finding. */
  say(code: FindingCode, count: number, says: string, place?: Vec3, measured?: Measured): void {
    if (count === 0) return;
    const kind = code.replace('repair.', '');
    this.counts[kind] = (this.counts[kind] ?? 0) + count;
    this.findings.push(
      finding(code, {
        subject: this.subject,
        measured: measured ?? { value: count, unit: 'count' },
        ...(place && { place }),
        says,
      }),
    );
  }

  /** A stop; gives undefined, so that it can be returned where a mesh would be. */
  stop(code: FindingCode, says: string, place?: Vec3): undefined {
    this.say(code, 1, says, place);
    return undefined;
  }

  mended({
    joined,
    collapsed,
    doubled,
    turned,
    parted,
    slivers,
    holes,
    openBefore,
  }: Omit<Mend, 'mesh' | 'pairs'>): void {
    this.say(
      'repair.points-joined',
      joined.count,
      `${counted(joined.count, 'point on an open edge was', 'points on open edges were')} moved by up to ${mm(joined.size)} mm to meet ${joined.count === 1 ? 'its neighbor' : 'their neighbors'}.`,
      joined.place,
    );
    const left = collapsed.count + doubled.count;
    this.say(
      'repair.faces-dropped',
      left,
      `${counted(left, 'face was', 'faces were')} left out: ${collapsed.count} without area, ${doubled.count} doubled.`,
      doubled.place ?? collapsed.place,
    );
    this.say(
      'repair.faces-turned',
      turned.count,
      `${counted(turned.count, 'face looked the other way than its neighbors and was', 'faces looked the other way than their neighbors and were')} turned over.`,
      turned.place,
    );
    this.say(
      'repair.edges-split',
      parted.count,
      `${counted(parted.count, 'edge', 'edges')} joined more than two faces; the sheets that met there were told apart.`,
      parted.place,
    );
    this.say(
      'repair.slivers-turned',
      slivers.count,
      `${counted(slivers.count, 'face with all corners on one line was joined with its neighbors', 'faces with all corners on one line were joined with their neighbors')}.`,
      slivers.place,
    );
    if (holes) {
      this.say(
        'repair.holes-closed',
        holes.closed,
        `${counted(holes.closed, 'hole', 'holes')} (${counted(openBefore, 'open edge', 'open edges')} in the file) ${holes.closed === 1 ? 'was' : 'were'} closed with ${counted(holes.added, 'face', 'faces')} over ` +
          `${mm(holes.area)} mm2; ${holes.closed === 1 ? 'it' : 'the widest'} is ${mm(holes.widest)} mm across and the new faces lie up to ` +
          `${mm(holes.farthest)} mm from any edge of the old.`,
        holes.place,
      );
    }
    this.deviation = Math.max(this.deviation, joined.size, holes?.farthest ?? 0);
  }

  faced({ turned, cavities, place }: FacedOutward): void {
    this.say(
      'repair.inside-out',
      turned,
      `${counted(turned, 'body was inside out and was', 'bodies were inside out and were')} turned.`,
      place,
    );
    this.say(
      'repair.cavity',
      cavities,
      `The master has ${counted(cavities, 'closed cavity', 'closed cavities')} inside.`,
    );
  }

  united({ united, overlap, place }: United): void {
    this.say(
      'repair.shells-united',
      united,
      `${counted(united, 'shell that overlaps', 'shells that overlap')} by ${mm(overlap)} mm3 ${united === 1 ? 'was' : 'were'} united into one skin.`,
      place,
    );
  }

  cut(cuts: readonly CutOut[]): void {
    const faces = cuts.reduce((sum, { cut }) => sum + cut, 0);
    const added = cuts.reduce((sum, { spanned }) => sum + spanned.added, 0);
    const area = cuts.reduce((sum, { spanned }) => sum + spanned.area, 0);
    const farthest = cuts.reduce((most, { spanned }) => Math.max(most, spanned.farthest), 0);
    this.say(
      'repair.crossings-cut',
      faces,
      `${counted(faces, 'face where the surface crosses itself was', 'faces where the surface crosses itself were')} cut out and the gaps spanned with ${counted(added, 'face', 'faces')} over ` +
        `${mm(area)} mm2, no farther than ${mm(farthest)} mm from the rims.`,
      cuts[0]?.place,
    );
    this.deviation = Math.max(this.deviation, farthest);
  }

  specks(count: number, place?: Vec3): void {
    this.say(
      'repair.specks-dropped',
      count,
      `${counted(count, 'shell that encloses next to nothing was', 'shells that enclose next to nothing were')} left out.`,
      place,
    );
  }

  remeshed({ reason, edge, before, after, kept, added }: RemeshFigures, place?: Vec3): void {
    this.remeshEdge = edge;
    this.deviation = Math.max(kept.greatest, added.greatest);
    this.say(
      'repair.remeshed',
      1,
      `${reason} Its surface was made anew with edges of ${mm(edge)} mm: volume ${mm(before.volume)} -> ` +
        `${mm(after.volume)} mm3, area ${mm(before.area)} -> ${mm(after.area)} mm2; the old outer surface lies ` +
        `within ${mm(kept.greatest)} mm (rms ${mm(kept.rms)}) of the new one, the new one within ` +
        `${mm(added.greatest)} mm of the old.`,
      place ?? kept.place,
      { value: this.deviation, unit: 'mm' },
    );
  }

  bodies(count: number): void {
    if (count > 1) {
      this.say('repair.several-bodies', count, `The master is made of ${count} separate bodies.`);
    }
  }
}

/** What a new surface is compared by: mm, mm2, mm3; deviations of the old from the new and of the new from the old. */
export interface RemeshFigures {
  readonly reason: string;
  readonly edge: number;
  readonly before: { readonly volume: number; readonly area: number };
  readonly after: { readonly volume: number; readonly area: number };
  readonly kept: Deviation;
  readonly added: Deviation;
}

/** Three digits, for sentences. */
export const mm = (value: number): string => Number(value.toPrecision(3)).toString();
