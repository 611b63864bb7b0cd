import type { Vec3 } from '../geometry/index.ts';
import type { LockRule } from './lock.ts';
import type { SpinField } from './potential.ts';

/** The metal that is poured: kg/m3, N/m. */
interface Metal {
  readonly densityKgM3: number;
  readonly tensionNM: number;
}

/** How a mold is filled. */
export interface Conditions {
  readonly field: SpinField;
  readonly metal: Metal;
  /** Radius of the free surface in the well, in the plane z = 0, mm. */
  readonly wellLevel: number;
  /** Metal that comes to each gate, mm3/s; left out, as much as the well's level drives through it. */
  readonly flow?: number;
  /** Seconds the metal's superheat lasts in a section of 1 mm volume over surface; grows with its square. Left out: not told. */
  readonly superheatS?: number;
  /** Gap along the parting line that air leaks through, and how far it leads, mm. Left out, none. */
  readonly leak?: { readonly gap: number; readonly land: number };
}

/** A gate (metal comes in, and air out until it is covered) or vent (air out) where it opens into the cavity. */
export interface Port {
  readonly id: string;
  readonly kind: 'gate' | 'vent';
  /** Cells of the cavity it opens into. */
  readonly cells: readonly number[];
  /** Across and deep, mm. */
  readonly width: number;
  readonly depth: number;
}

/** One set of assumptions about what is not known. */
export interface Assumption {
  readonly lock: LockRule;
  readonly leaks: boolean;
}

/** What shuts a pocket in: metal that fills the way out, a narrow place that stays shut, a covered gate or vent; `never` where there was no way out. */
export type SealedBy = 'metal' | 'neck' | 'gate' | 'vent' | 'never';

/** Air that stays under one assumption. Volumes in mm3, lengths in mm. */
export interface Pocket {
  /** Cells it is shut into, in the order metal would fill them. */
  readonly cells: readonly number[];
  /** Before and after it is pressed together. */
  readonly shutIn: number;
  readonly volume: number;
  /** Where it stands: its last sealed place, or under the mouth of its leg. A vent belongs there. */
  readonly place: Vec3;
  readonly where: 'room' | 'leg' | 'mouth';
  /** Smallest and largest clear width of the leg it is in, or under the mouth of. */
  readonly clear?: readonly [number, number];
  readonly sealedBy: SealedBy;
  /** Where it was sealed; left out where there never was a way. */
  readonly sealedAt?: Vec3;
  /** Pressure of the metal at its face, Pa. */
  readonly pressurePa: number;
  /** Comes out through the parting line within the time the metal is hot, if it leaks. */
  readonly leaksOut: boolean;
}
