import { arc, circle, hole, line, placed, type Track } from '../../src/geometry/index.ts';
import type { Drawing } from '../../src/mold/index.ts';

/** A slot 20 mm between the middles of its half-round ends of radius 5. */
const slot: Track = {
  kind: 'track',
  closed: true,
  corners: [{ at: [-10, -5] }, { at: [10, -5], bulge: 1 }, { at: [10, 5] }, { at: [-10, 5], bulge: 1 }],
};

/** A washer of 120 mm with a slot in it, an arc and two lines: every kind of thing a drawing can hold. */
export const sample: Drawing = {
  id: 'sample',
  title: 'Sample <1> & more',
  subjects: [],
  thickness: 3,
  marks: [
    { layer: 'cut', outline: [circle([0, 0], 60), hole([0, 0], 20), placed(slot, 0.3, [0, 40])], texts: [] },
    {
      layer: 'engrave',
      outline: [arc([0, 0], 50, -0.4, 0.7), line([30, 0], [50, 0])],
      texts: [{ words: 'H', at: [-40, 0], height: 5, turnRad: Math.PI / 2, anchor: 'start' }],
    },
    { layer: 'score', outline: [line([0, -30], [0, -50], [5, -50])], texts: [] },
  ],
  estimated: false,
};
