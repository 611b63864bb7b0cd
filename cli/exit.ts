/** What the program's exit code says. Documented in the README and in --help. */
export const exitCode = {
  fine: 0,
  /** Something must not be used as it is; the report names it. */
  stop: 1,
  /** The plan, a master or an argument cannot be read. */
  unreadable: 2,
  /** A fault of the program. */
  ours: 3,
  /** Broken off with Ctrl-C; what was finished is whole. */
  interrupted: 130,
} as const;

export type ExitCode = (typeof exitCode)[keyof typeof exitCode];

/** Thrown by the shells' own readers for what the user can mend; shown as one line, exit 2. */
export class Unreadable extends Error {
  override readonly name: string = 'Unreadable';
}

/** Nothing more can be written there, whatever it is. */
export class NoRoom extends Unreadable {
  override readonly name = 'NoRoom';
}
