import type { Share } from './wilson.ts';
import type { Cavity } from './yields.ts';

/** Lower bounds of the steps a yield is drawn in, the best first, with the color of the cell and of the number on it. */
const steps = [
  { from: 1, says: 'all good', fill: '#eef3f9', ink: '#1d2733' },
  { from: 0.9, says: '90 % and more', fill: '#c3d7ec', ink: '#1d2733' },
  { from: 0.75, says: '75 % and more', fill: '#8db4d9', ink: '#14202c' },
  { from: 0.5, says: 'half and more', fill: '#3a77b0', ink: '#ffffff' },
  { from: 0, says: 'less than half', fill: '#123c6b', ink: '#ffffff' },
] as const;

/** The steps, for a key beside the picture. Darker is worse in one hue: what people with any color vision tell apart. */
export const yieldSteps: readonly { readonly says: string; readonly fill: string }[] = steps;

/** A cavity in the picture of the yield, mm from the axis. */
export interface YieldCell extends Cavity {
  /** Radius of the circle round it. */
  readonly reach: number;
  /** Castings that came out good of those looked at: `34/36`; nothing where none was. */
  readonly number: string;
  readonly fill?: string;
  readonly ink?: string;
}

/** Each cavity with its yield in a number and a color. */
export const yieldCells = (
  cavities: readonly (Cavity & { readonly reach: number })[],
  byCavity: ReadonlyMap<string, Share>,
): YieldCell[] =>
  cavities.map(({ id, master, x, y, reach }) => {
    const share = byCavity.get(id);
    const cell = { id, master, x, y, reach };
    if (!share || share.of === 0) return { ...cell, number: '' };
    const { fill, ink } = steps.find(({ from }) => share.share >= from) ?? steps[steps.length - 1];
    return { ...cell, number: `${Math.round(share.share * share.of)}/${share.of}`, fill, ink };
  });
