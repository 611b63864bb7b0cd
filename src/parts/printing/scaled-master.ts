import { boundsOf, compose, moveMesh, scaling } from '../../geometry/index.ts';
import { closedAfterRounding, onGrid } from '../../kernel/index.ts';
import { resized } from '../../lettering/index.ts';
import {
  type Master,
  type Mold,
  masterOf,
  type Part,
  type Placement,
  part,
  type Solid,
} from '../../mold/index.ts';
import { onBed } from '../making/index.ts';

interface ScaledInput {
  readonly id: string;
  readonly master: Master;
  /** One of the placements that use it at this size. */
  readonly placement: Placement;
  readonly used: readonly string[];
}

/**
 * Masters enlarged by the shrink of alloy and rubber or to another size than their file's, to be printed and laid into rubber or silicone: one solid for
 * each master and size. It stands in the file's own axes, on its lowest point; its matrix is that of the first
 * placement which uses it.
 */
export const scaledMaster: Part = part({
  id: 'scaled-master',
  title: 'scaled masters',
  processes: ['rubber', 'poured'],
  units: (mold) =>
    scaledInputs(mold).map((input) => ({ subject: input.master.id, about: input.used, input })),
  run: (input) => [enlarged(input)],
});

function scaledInputs(mold: Mold): ScaledInput[] {
  const groups = new Map<string, Placement[]>();
  for (const placement of mold.placements) {
    if (enlargement(masterOf(mold, placement), placement) === 1) continue;
    const key = `${placement.master} ${placement.scale}`;
    groups.set(key, [...(groups.get(key) ?? []), placement]);
  }
  const sizes = new Map<string, number>();
  return [...groups.values()].map((group) => {
    const [first] = group;
    const before = sizes.get(first.master) ?? 0;
    sizes.set(first.master, before + 1);
    return {
      id: `scaled-${first.master}${before === 0 ? '' : `-${before + 1}`}`,
      master: masterOf(mold, first),
      placement: first,
      used: group.map(({ id }) => id),
    };
  });
}

/** How much larger than in its file the master is to be printed. */
const enlargement = ({ fileScale = 1 }: Master, { scale }: Pick<Placement, 'scale'>): number =>
  scale * fileScale;

function enlarged({ id, master, placement, used }: ScaledInput): Solid {
  const { scale, matrix } = placement;
  const toBed = onBed(boundsOf(master.mesh.positions).min[2] * scale);
  const mesh = moveMesh(master.mesh, compose(toBed, scaling(scale)));
  return {
    id,
    title: `${master.id} ${resized(enlargement(master, placement))}`,
    role: 'scaled master',
    subjects: [master.id, ...used],
    mesh: closedAfterRounding(onGrid(mesh)),
    // Back off the bed and to the casting's size, then where the placement puts it.
    toMold: compose(matrix, scaling(1 / scale), onBed(-boundsOf(master.mesh.positions).min[2] * scale)),
    estimated: master.estimated,
    count: used.length,
  };
}
