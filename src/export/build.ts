import type { Finding, Report } from '../findings/index.ts';
import type { Drawing, Mold } from '../mold/index.ts';
import type { CheckedSolid } from './solid-file.ts';

/** A solid or drawing that is not handed out, and the stops that concern it. */
export interface Withheld {
  readonly id: string;
  readonly title: string;
  readonly subjects: readonly string[];
  readonly reasons: readonly Finding[];
}

/** All that a format can write from. */
export interface Build {
  readonly mold: Mold;
  /** SHA-256 of the plan's bytes, hex. */
  readonly planHash: string;
  readonly version: string;
  /** Audited, and free of stops. */
  readonly solids: readonly CheckedSolid[];
  /** Free of stops. Two of one id are one file's name: there are none. */
  readonly drawings: readonly Drawing[];
  readonly withheld: readonly Withheld[];
  readonly report: Report;
}
