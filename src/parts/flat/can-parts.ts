import { circle, hole, line, type Outline, type Path } from '../../geometry/index.ts';
import { type CanRing, canRings, type Part, task } from '../../mold/index.ts';
import { flatFixture } from '../making/index.ts';
import {
  engravedPlate,
  type FindTitlePlace,
  layOutTitle,
  planWords,
  titlePlaceOnRing,
} from '../plate/index.ts';

const titles: Readonly<Record<CanRing['id'], string>> = {
  'can-spacer': 'spacer plate for the can',
  'centering-collar': 'centering collar, round the lower half',
  'thickness-stop': 'thickness stop, round the upper half',
};

/**
 * Spacer plate, centering collar and thickness stop for the can. They cure with the mold: the heat check holds them.
 * Engraved on the side that lies on a lid, where no rubber flows into it.
 */
export const canParts: Part = task({
  id: 'can-parts',
  title: 'parts for the can',
  processes: ['rubber'],
  units: (mold) =>
    canRings(mold).map((ring) => ({
      subject: ring.id,
      about: [ring.id],
      input: {
        ring,
        label: mold.disc.label,
        revision: mold.revision,
        fixture: flatFixture(mold.fixture),
      },
    })),
  run: ({ ring, fixture, ...names }, { kernel }) => {
    const { id, height: thickness } = ring;
    const outline = ringOutline(ring);
    const title = titles[id];
    const label = layOutTitle({ id, title }, ['LID SIDE', ...planWords(names)], spotFor(ring));
    const { lettered, findings } = label;
    const engraved = [indexLine(ring), ...label.engraved];
    const naming = { id, title, role: 'can part', subjects: [id], lettered } as const;
    const { solid, drawing } = kernel.scope((scope) =>
      engravedPlate(scope, { outline, thickness, engraved }, fixture, naming),
    );
    return { solids: [solid], drawings: [drawing], findings };
  },
});

/** Index mark: a line that runs out through the edge at angle 0. */
const indexLine = ({ outer, inner }: CanRing): Path => line([Math.max(inner + 1, outer - 8), 0], [outer, 0]);

function spotFor({ outer, inner }: CanRing): FindTitlePlace {
  return titlePlaceOnRing(inner, outer, [{ x: outer, y: 0, radius: 9 }]);
}

const ringOutline = ({ outer, inner }: CanRing): Outline => [
  circle([0, 0], outer),
  ...(inner > 0 ? [hole([0, 0], inner)] : []),
];
