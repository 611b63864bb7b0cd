/** A file the plan names: its bytes, or in one plain sentence why there are none. `outside`: not in the plan's folder. */
export type FileRead =
  | { readonly bytes: Uint8Array; readonly name: string; readonly outside: boolean }
  | { readonly fault: string };

/** How the core gets at files; each shell brings its own. `path` is as the plan writes it. */
export type FileAccess = (path: string) => Promise<FileRead>;
