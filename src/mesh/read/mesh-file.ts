import {
  type CodeValues,
  type Finding,
  type FindingCode,
  findingWith,
  type TextPlace,
} from '../../findings/index.ts';

/** Largest file read, bytes. Every reader's memory is a small multiple of the file. */
export const mostFileBytes = 2 ** 30;
/** Most triangles one file may hold; 20 M of them as a soup take 1.7 GB. */
export const mostFileTriangles = 20_000_000;
/** Most points, as a soup of that many triangles has. */
export const mostFilePoints = 3 * mostFileTriangles;
/** More faces than this share (and more than one) with corners that are not numbers, and the file is not used. */
const mostBroken = 0.01;

type MeshCode = Extract<FindingCode, `mesh.${string}`>;
/** What a finding says besides the name of the file, which all of them have. */
type Said<C extends MeshCode> = Omit<CodeValues<C>, 'file'>;

/** Where the first corner stands that is not a finite number. */
type FirstBroken =
  | { readonly which: 'face'; readonly face: number; readonly byte: number }
  | { readonly which: 'line' | 'point'; readonly line: number };

/** Ends the reading of a file with a stop; caught where the reading was started, never seen outside this room. */
export class MeshFault extends Error {
  constructor(readonly finding: Finding) {
    super(`${finding.subject}: ${finding.code}`);
  }
}

/** A file being read: its bytes, and the remarks made on it so far. All findings have the file as subject. */
export class MeshFile {
  readonly findings: Finding[] = [];

  constructor(
    readonly name: string,
    readonly bytes: Uint8Array,
  ) {}

  /** Notes a finding and goes on. */
  say<C extends MeshCode>(code: C, said: Said<C>, at?: TextPlace): void {
    this.findings.push(findingWith(code, this.named(said), { subject: this.name, ...(at && { at }) }));
  }

  /** Ends the reading with a stop. */
  stop<C extends MeshCode>(code: C, said: Said<C>, at?: TextPlace): never {
    const about = { subject: this.name, severity: 'stop', ...(at && { at }) } as const;
    throw new MeshFault(findingWith(code, this.named(said), about));
  }

  /** Ends the reading where a count passes its limit. */
  limit(count: number, most: number, what: 'triangles' | 'points'): void {
    if (count > most) this.stop('mesh.too-many-triangles', { measured: count, limit: most, what });
  }

  /** Says how many faces were left out because a corner is not a finite number; too many end the reading. */
  notFinite(dropped: number, total: number, first: FirstBroken, at?: TextPlace): void {
    if (dropped === 0) return;
    const limit = Math.floor(total * mostBroken);
    const said = { ...first, measured: dropped, total };
    if (dropped === total || (dropped > limit && dropped > 1))
      this.stop('mesh.not-finite', { ...said, limit }, at);
    this.say('mesh.not-finite', said, at);
  }

  /** That `said` and the file's name are all that the code gives is known only where the code is. */
  private named<C extends MeshCode>(said: Said<C>): CodeValues<C> {
    return { file: this.name, ...said } as unknown as CodeValues<C>;
  }
}
