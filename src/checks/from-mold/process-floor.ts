import type { Mold } from '../../mold/index.ts';

/** What the process named for the fixtures makes whole. */
export interface ProcessFloor {
  readonly process: string;
  /** Thinnest wall, mm. */
  readonly least: number;
}

/** Of rigid halves, which are printed or machined by it; undefined for others, and where the plan names no process. */
export const floorOf = ({ process, fixture: { making } }: Mold): ProcessFloor | undefined =>
  process === 'rigid' && making ? { process: making.process, least: making.leastFeature } : undefined;

/** Whether a wall is thinner than that, though something is left of it. */
export const isUnder = (thickness: number, floor: ProcessFloor | undefined): floor is ProcessFloor =>
  floor !== undefined && thickness > 0 && thickness < floor.least;
