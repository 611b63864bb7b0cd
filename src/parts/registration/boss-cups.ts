import { type Finding, finding } from '../../findings/index.ts';
import { circumscribed, compose, segmentsFor, translation, upsideDown } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { type Boss, cornerShare, type Fixture, type Part, socketOutline, task } from '../../mold/index.ts';
import { asSolid, labelCutter, labelDepth, labelFindings, openingFit } from '../making/index.ts';
import { socketBody } from './boss-body.ts';
import { type BossKind, bossKinds, faceRoom } from './bosses.ts';

/** Least material beside and over the socket, mm. Common practice, no published source. */
const leastWall = 1.5;
/** 45 degrees round the closed end, which is the first layer when printed, mm. */
const chamfer = 0.6;

interface CupInput extends BossKind {
  readonly fixture: Fixture;
  readonly upper: number;
  /** Least cover wanted, mm. */
  readonly cover: number;
}

/**
 * A cup with the socket of a loose dome, cone or hexagon: the head with the fixtures' clearance, drafted walls and a
 * lead-in. On the bench it shows how the boss fits; put over the head before the upper half is pressed it stays in that
 * half as a sleeve, where it leaves rubber enough over it; where not is told. Stands on its closed end, mouth up, the
 * size engraved underneath. Cap nuts, which are bought, have none.
 */
export const bossCups: Part = task({
  id: 'boss-cups',
  title: 'socket cups',
  processes: ['rubber'],
  units: (mold) =>
    bossKinds(mold)
      .filter(({ shape }) => shape.kind !== 'cap nut')
      .map((kind) => ({
        subject: kind.used[0],
        about: kind.used,
        input: { ...kind, fixture: mold.fixture, upper: mold.disc.upper, cover: mold.limits.cover },
      })),
  run: (input, { kernel }) => {
    const { shape, used, fixture } = input;
    const id = input.id.replace(/^boss-/, 'cup-');
    const title = `socket cup for ${shape.kind} ${shape.size}`;
    const times = `${used.length} ${used.length === 1 ? 'time' : 'times'}`;
    const sizes = cupSizes(input);
    const room = faceRoom(sizes.radius - chamfer);
    const solid = kernel.scope((scope) => {
      const label = labelCutter(scope, [shape.size], room);
      const words = label ? [scope.move(label, translation(0, 0, sizes.height), id)] : [];
      const body = scope.subtract(cupBody(scope, input, sizes), words, id);
      return asSolid(scope, body, compose(translation(0, 0, sizes.height), upsideDown), {
        id,
        title: `${title}, ${times}`,
        role: 'boss cup',
        subjects: used,
        compensation: fixture.compensation,
      });
    });
    const findings = [...labelFindings(id, [shape.size], room, title), ...tooHigh(input, title, sizes)];
    return { solids: [{ ...solid, count: used.length }], findings };
  },
});

/** The boss with the gap its cup leaves round it. */
const fitted = ({ shape, fixture }: CupInput): Boss => ({
  ...shape,
  clearance: openingFit(fixture, 2 * shape.headRadius) / 2,
});

function tooHigh({ id, upper, cover }: CupInput, title: string, { height }: CupSizes): Finding[] {
  const left = upper - height;
  if (left >= cover) return [];
  return [
    finding('cup.no-sleeve', {
      subject: id.replace(/^boss-/, 'cup-'),
      values: { which: left > 0 ? 'thin' : 'high', measured: left, limit: cover, title },
    }),
  ];
}

interface CupSizes {
  readonly radius: number;
  readonly height: number;
}

/** Outside: a wall round the mouth at its widest and over the tip, and there the depth of the label besides. */
function cupSizes(input: CupInput): CupSizes {
  const { fixture, shape } = input;
  const outline = socketOutline(fitted(input), 0, fixture.chordError, fixture.holeCompensation);
  const wall = Math.max(leastWall, 2 * (fixture.making?.leastFeature ?? 0));
  const widest = Math.max(...outline.map(([r]) => r));
  const reach = shape.kind === 'hexagon' ? widest * cornerShare : widest;
  const tip = Math.max(...outline.map(([, z]) => z));
  return { radius: reach + wall, height: tip + wall + labelDepth };
}

/** In the mold frame over a head at the origin, its mouth on the parting plane. */
function cupBody(scope: Scope, input: CupInput, { radius, height }: CupSizes): Body {
  const { id, fixture } = input;
  const segments = segmentsFor(radius, fixture.chordError);
  const outline = [
    [0, 0],
    [radius, 0],
    [radius, height - chamfer],
    [radius - chamfer, height],
    [0, height],
  ] as const;
  const wide = outline.map(([r, z]) => [circumscribed(r, segments), z] as const);
  const socket = socketBody(scope, fitted(input), fixture.chordError, fixture.holeCompensation ?? 0);
  return scope.subtract(scope.revolve(wide, segments, id), [socket], id);
}
