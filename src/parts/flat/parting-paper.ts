import { circle, hole, line, type Point2, polygon, reversed } from '../../geometry/index.ts';
import type { Drawing } from '../../mold/index.ts';
import type { Standing } from '../plate/index.ts';

interface PaperInput extends Standing {
  readonly radius: number;
  readonly masters: readonly { readonly id: string }[];
  readonly estimated: boolean;
}

/** Template for the paper between the halves: it leaves out masters, bosses and the well, all without clearance. */
export function partingPaper(input: PaperInput, outlines: readonly (readonly Point2[])[]): Drawing {
  const { radius, sprue, bosses, masters, estimated } = input;
  return {
    id: 'parting-paper',
    title: 'template for the parting paper',
    subjects: masters.map((master) => master.id),
    material: 'paper',
    estimated,
    marks: [
      {
        layer: 'cut',
        outline: [
          circle([0, 0], radius),
          ...(sprue ? [hole([0, 0], sprue.wellRadius)] : []),
          ...bosses.map(({ x, y, radius: head }) => hole([x, y], head)),
          ...outlines.map((ring) => reversed(polygon(ring))),
        ],
        texts: [],
      },
      { layer: 'engrave', outline: [line([radius - 10, 0], [radius, 0])], texts: [] },
    ],
  };
}
