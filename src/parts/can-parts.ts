import { circle, hole, type Outline } from '../kernel/index.ts';
import { type CanRing, canRings, type Part, work } from '../mold/index.ts';
import { asSolid, onBed } from './as-solid.ts';
import { flatFixture } from './fit.ts';
import { plateBody } from './plate-body.ts';

const titles: Readonly<Record<CanRing['id'], string>> = {
  'can-spacer': 'spacer plate for the can',
  'centering-collar': 'centering collar, round the lower half',
  'thickness-stop': 'thickness stop, round the upper half',
};

/** Spacer plate, centering collar and thickness stop for the can. They cure with the mold: the heat check holds them. */
export const canParts: Part = work({
  id: 'can-parts',
  title: 'parts for the can',
  scope: 'whole',
  processes: ['rubber'],
  jobs: (mold) =>
    canRings(mold).map((ring) => ({
      subject: ring.id,
      input: { ring, fixture: flatFixture(mold.fixture) },
    })),
  run: ({ ring, fixture }, { kernel }) => {
    const { id, height: thickness } = ring;
    const outline = ringOutline(ring);
    const title = titles[id];
    const solid = kernel.scope((scope) => {
      const body = plateBody(scope, { outline, thickness, engraved: [] }, fixture, title);
      return asSolid(scope, body, onBed(0), { id, title, role: 'can part', subjects: [id] });
    });
    const marks = [{ layer: 'cut', outline, texts: [] }] as const;
    return {
      solids: [solid],
      drawings: [{ id, title, subjects: [id], marks, thickness, estimated: false }],
      findings: [],
    };
  },
});

export const ringOutline = ({ outer, inner }: CanRing): Outline => [
  circle([0, 0], outer),
  ...(inner > 0 ? [hole([0, 0], inner)] : []),
];
