/** How far what something takes out of the halves reaches, mm: from the parting plane, and round its axis. */
export interface Space {
  readonly depth: number;
  readonly height: number;
  readonly reach: number;
}
