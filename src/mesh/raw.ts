import type { Finding } from '../findings/index.ts';

/** What a length in a file means. STL and OBJ do not say; 3MF does. */
export type FileUnit = 'micron' | 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** A mesh as a file says it: any soup of triangles, in the file's own unit, nothing promised. */
export interface RawMesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly unit?: FileUnit;
}

/** A reader's answer: a mesh with remarks, or no mesh and at least one stop. Readers never throw on bad input. */
export interface ReadOutcome {
  readonly mesh?: RawMesh;
  readonly findings: readonly Finding[];
}
