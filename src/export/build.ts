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

/** Where a build comes from, as only the shell knows it. */
export interface Origin {
  /** The plan's file with the folder it lies in, such as `charms/plan.yaml`: plans are told apart by it. */
  readonly file: string;
  /** SHA-256, hex, of all its results rest on: plan, masters, version of the program. */
  readonly inputs: string;
  /** What was asked for by name, where not all was. */
  readonly only?: readonly string[];
}

/** All that a format can write from. */
export interface Build {
  readonly mold: Mold;
  /** SHA-256 of the plan's bytes, hex. */
  readonly planHash: string;
  readonly version: string;
  /** Left out where there is no file, as on the page. */
  readonly origin?: Origin;
  /** Audited, and free of stops. */
  readonly solids: readonly CheckedSolid[];
  /** Free of stops. Two of one id are one file's name: there are none. */
  readonly drawings: readonly Drawing[];
  readonly withheld: readonly Withheld[];
  readonly report: Report;
}
