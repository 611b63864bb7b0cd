import { published, type RowSource } from './source.ts';

/**
 * Torque factors K of T = K F d a screw may have: the least with anti-seize paste, the most black and dry. The range
 * tells what force a torque may stand for, where nobody knows the friction.
 */
export const torqueFactors: { readonly least: number; readonly most: number; readonly source: RowSource } = {
  least: 0.12,
  most: 0.3,
  source: published(
    'T = K F d, K 0.12 (anti-seize) to 0.30 (black, dry): Shigley, Mechanical Engineering Design, 5th ed., sec. 8-8',
  ),
};

/** Share of its proof load a bolt that is used again is tightened to. */
export const preloadShare: { readonly value: number; readonly source: RowSource } = {
  value: 0.75,
  source: published(
    'three quarters of the proof load where bolts are used again: Shigley, Mechanical Engineering Design',
  ),
};
