import { type Finding, type FindingCode, type FindingDetails, finding } from '../../findings/index.ts';

/** Largest file read, bytes. Every reader's memory is a small multiple of the file. */
export const mostFileBytes = 2 ** 30;
/** Most triangles one file may hold; 20 M of them as a soup take 1.7 GB. */
export const mostFileTriangles = 20_000_000;
/** Most points, as a soup of that many triangles has. */
export const mostFilePoints = 3 * mostFileTriangles;
/** More faces than this share (and more than one) with corners that are not numbers, and the file is not used. */
const mostBroken = 0.01;

type Details = Partial<FindingDetails>;

/** Ends the reading of a file with a stop; caught where the reading was started, never seen outside this room. */
export class MeshFault extends Error {
  constructor(readonly finding: Finding) {
    super(finding.says);
  }
}

/** A file being read: its bytes, and the remarks made on it so far. All findings have the file as subject. */
export class MeshFile {
  readonly findings: Finding[] = [];

  constructor(
    readonly name: string,
    readonly bytes: Uint8Array,
  ) {}

  /** Notes a finding and goes on. `says` is a clause without the file's name and full stop. */
  say(code: FindingCode, says: string, details: Details = {}): void {
    this.findings.push(finding(code, { subject: this.name, says: `${this.name}: ${says}.`, ...details }));
  }

  /** Ends the reading with a stop. */
  stop(code: FindingCode, says: string, details: Details = {}): never {
    throw new MeshFault(
      finding(code, { subject: this.name, says: `${this.name}: ${says}.`, severity: 'stop', ...details }),
    );
  }

  /** Ends the reading where a count passes its limit. */
  limit(count: number, most: number, what: 'triangles' | 'points'): void {
    if (count <= most) return;
    this.stop('mesh.too-many-triangles', `it holds more than ${most} ${what}`, {
      measured: { value: count, unit: 'count' },
      limit: { value: most, unit: 'count' },
    });
  }

  /** Says how many faces were left out because a corner is not a finite number; too many end the reading. */
  notFinite(dropped: number, total: number, first: string, at: Details = {}): void {
    if (dropped === 0) return;
    const says = `${dropped} of ${total} faces have corners that are not finite numbers, the first ${first}`;
    const measured = { value: dropped, unit: 'count' } as const;
    const limit = { value: Math.floor(total * mostBroken), unit: 'count' } as const;
    if (dropped === total || (dropped > limit.value && dropped > 1)) {
      this.stop('mesh.not-finite', `${says}; so broken a file is not used`, { ...at, measured, limit });
    }
    this.say('mesh.not-finite', `${says}; they were left out`, { ...at, measured });
  }
}
