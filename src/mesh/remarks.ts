import { type Finding, type FindingCode, finding, type Measured } from '../findings/index.ts';
import type { Vec3 } from '../kernel/index.ts';
import type { FacedOutward } from './face-outward.ts';
import type { Mend } from './mend.ts';
import type { United } from './unite-shells.ts';

/** Collects what was done to one mesh: a finding for each kind of repair, with its count and a place. */
export class Remarks {
  readonly findings: Finding[] = [];
  readonly counts: Record<string, number> = {};
  /** Farthest any surface is known to have been moved, mm. */
  deviation = 0;

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

  mended({ joined, collapsed, doubled, turned, holes, openBefore }: Mend): void {
    this.say(
      'repair.points-joined',
      joined.count,
      `${joined.count} points on open edges were moved by up to ${mm(joined.size)} mm to meet their neighbours.`,
      joined.place,
    );
    const left = collapsed.count + doubled.count;
    this.say(
      'repair.faces-dropped',
      left,
      `${left} faces were left out: ${collapsed.count} without area, ${doubled.count} doubled.`,
      doubled.place ?? collapsed.place,
    );
    this.say(
      'repair.faces-turned',
      turned.count,
      `${turned.count} faces looked the other way than their neighbours and were turned over.`,
      turned.place,
    );
    if (holes) {
      this.say(
        'repair.holes-closed',
        holes.closed,
        `${holes.closed} holes (${openBefore} open edges in the file) were closed with ${holes.added} faces over ` +
          `${mm(holes.area)} mm2; the widest is ${mm(holes.widest)} mm across.`,
        holes.place,
      );
    }
    this.deviation = Math.max(this.deviation, joined.size);
  }

  faced({ turned, cavities, place }: FacedOutward): void {
    this.say('repair.inside-out', turned, `${turned} bodies were inside out and were turned.`, place);
    this.say('repair.cavity', cavities, `The master has ${cavities} closed cavities inside.`);
  }

  united({ united, overlap, place }: United): void {
    this.say(
      'repair.shells-united',
      united,
      `${united} shells that overlap by ${mm(overlap)} mm3 were united into one skin.`,
      place,
    );
  }
}

export const mm = (value: number): string => Number(value.toPrecision(3)).toString();
