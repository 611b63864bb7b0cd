import { type Finding, finding } from '../../findings/index.ts';
import { arc, circle, hole, line, type Path, pointsOf, type Track } from '../../geometry/index.ts';
import type { Scope } from '../../kernel/index.ts';
import {
  type Boss,
  type Channel,
  cutRun,
  type Disc,
  type Drawing,
  type Fixture,
  headReach,
  isRing,
  type Part,
  runLength,
  runSides,
  type Sprue,
  task,
} from '../../mold/index.ts';
import { type HalfName, holeFit } from '../making/index.ts';
import {
  type FindTitlePlace,
  freeSpace,
  layOutTitle,
  overlapsAmong,
  type PlanNames,
  planWords,
  type TitlePlace,
  titlePlaceOnPlate,
} from '../plate/index.ts';
import { leavingAngles, ringPieces } from './ring-pieces.ts';

/** Left between a slot and the rim, and thrice in a ring, so that the stencil holds together; the knife goes on by itself, mm. */
const bridge = 3;
const middle: TitlePlace = { at: [0, 0], turnRad: 0 };
/** Any stiff sheet; common practice, mm. */
const sheet = 1;

interface StencilInput extends PlanNames {
  readonly half: HalfName;
  readonly disc: Pick<Disc, 'radius'>;
  readonly sprue?: Sprue;
  readonly bosses: readonly Boss[];
  readonly channels: readonly Channel[];
  readonly fixture: Pick<Fixture, 'material' | 'clearance' | 'holeCompensation'>;
}

/**
 * Stencil for cutting gates and vents with the knife, to be laid on the parting face of the half they are cut into:
 * a slot as wide as each channel (and what slots come out tighter by), openings over the heads of the bosses, which hold it in place, the well as a line.
 * The upper half's is seen on its parting face: turned over about the index mark's radius.
 */
export const knifeStencil: Part = task({
  id: 'knife-stencil',
  title: 'knife stencil',
  processes: ['rubber'],
  units: (mold) =>
    (['lower', 'upper'] as const).flatMap((half) => {
      const channels = mold.channels.filter((channel) => channel.half === half);
      if (channels.length === 0) return [];
      const { disc, revision, sprue, bosses } = mold;
      const { material, clearance, holeCompensation } = mold.fixture;
      const input: StencilInput = {
        half,
        label: disc.label,
        revision,
        disc: { radius: disc.radius },
        ...(sprue && { sprue }),
        bosses,
        channels,
        fixture: { material, clearance, ...(holeCompensation !== undefined && { holeCompensation }) },
      };
      return [{ subject: stencilId(half), about: [], input }];
    }),
  run: (input, { kernel }) => {
    const { slots, meetings } = kernel.scope((scope) => {
      const joined = joinedSlots(scope, input);
      return { slots: joined, meetings: slotsThatMeet(scope, joined, input.half) };
    });
    const { drawing, findings } = stencilDrawing(input, slots);
    return { solids: [], drawings: [drawing], findings: [...meetings, ...findings] };
  },
});

const stencilId = (half: HalfName): string => `${half}-knife-stencil`;

const outlinePoints = ({ corners }: Track) => corners.map(({ at }) => at);

/** Slots of channels that open into one another, as the plan says, are one opening. */
function joinedSlots(scope: Scope, input: StencilInput): Slot[] {
  const slots = slotsOf(input);
  const stemOf = ({ id, opensInto }: Slot): string => {
    const stem = slots.find((slot) => slot.id === opensInto);
    return stem ? stemOf(stem) : id;
  };
  return slots.flatMap((slot, i) => {
    const members = slots.filter((other) => stemOf(other) === slot.id);
    const isFirst = slots.findIndex(({ id }) => id === slot.id) === i;
    if (!isFirst || stemOf(slot) !== slot.id) return [];
    if (members.length === 1) return [slot];
    const profiles = members.map((member) => scope.profileOf([outlinePoints(member.slot)]));
    return scope.outlinesOf(scope.uniteProfiles(profiles)).map((outline) => ({
      id: slot.id,
      // Outlines go round what is open, slots round the sheet.
      slot: { kind: 'track', closed: true, corners: outline.map((at) => ({ at })).reverse() } as const,
    }));
  });
}

function slotsThatMeet(scope: Scope, slots: readonly Slot[], half: HalfName): Finding[] {
  const profiles = slots.map(({ slot }) => scope.profileOf([outlinePoints(slot)]));
  return overlapsAmong(scope, profiles).map(({ one, other, area }) =>
    meeting(stencilId(half), slots[one].id, slots[other].id, area),
  );
}

const meeting = (subject: string, id: string, other: string, shared: number): Finding =>
  finding('stencil.slots-meet', {
    subject,
    values: { measured: shared, limit: 0, one: other, other: id },
  });

interface Slot {
  readonly id: string;
  readonly opensInto?: string | undefined;
  readonly slot: Track;
}

/** Slots with square ends, from the well (or the cavity) to the cavity (or the bridge at the rim). */
function slotsOf({ channels, disc, sprue, half, fixture }: StencilInput): Slot[] {
  const side = half === 'upper' ? -1 : 1;
  return channels.flatMap(({ id, run, opensInto }) => {
    const wider = run.map((station) => ({
      ...station,
      width: station.width + (fixture.holeCompensation ?? 0),
    }));
    const [first, last] = [wider[0], wider[wider.length - 1]];
    // Slots stay clear of the well's line and of the rim.
    const asSlot = (piece: Channel['run']): Slot => {
      const { left, right } = runSides(piece);
      // As a hole: clockwise.
      const around = half === 'upper' ? [...right, ...left.reverse()] : [...left, ...right.reverse()];
      const corners = around.map(([x, y]) => ({ at: [x, side * y] as const }));
      return { id, opensInto, slot: { kind: 'track', closed: true, corners } as const };
    };
    if (isRing(wider)) return ringPieces(wider, leavingAngles(id, channels), bridge).map(asSlot);
    const start = Math.max(0, (sprue?.wellRadius ?? 0) - Math.hypot(...first.at));
    const past = Math.max(0, Math.hypot(...last.at) + last.width / 2 - (disc.radius - bridge));
    const end = runLength(wider) - past;
    if (end - start < first.width) return [];
    return [asSlot(cutRun(wider, start, end))];
  });
}

function stencilDrawing(
  input: StencilInput,
  slots: readonly Slot[],
): { drawing: Drawing; findings: readonly Finding[] } {
  const { half, disc, sprue, bosses, channels, fixture } = input;
  const side = half === 'upper' ? -1 : 1;
  const heads = bosses.map((boss) => {
    const reach = headReach(boss);
    return hole([boss.x, side * boss.y], reach + holeFit(fixture, 2 * reach) / 2);
  });
  const well: Path[] = sprue ? [circle([0, 0], sprue.wellRadius)] : [];
  const mark = [line([disc.radius - 10, 0], [disc.radius, 0]), arc([0, 0], disc.radius - 1, -0.05, 0.05)];
  const cuts = [...heads, ...slots.map(({ slot }) => slot)];
  const open = [...cuts, ...well].map((path) => pointsOf(path));
  const onDisc = titlePlaceOnPlate(disc.radius - bridge, freeSpace(disc.radius - bridge, open, mark));
  const find: FindTitlePlace = (width, height) =>
    Math.hypot(width, height) / 2 < (sprue?.wellRadius ?? 0) ? middle : onDisc(width, height);
  const id = stencilId(half);
  // Its parting face is looked at from below: what lies to the left there lies to the right on the plan view.
  const turned = half === 'upper' ? ['MIRRORED'] : [];
  const words = [`${half} half`, ...turned, 'THIS SIDE UP', ...planWords(input)];
  const label = layOutTitle({ id, title: `knife stencil for the ${half} half` }, words, find);
  const drawing: Drawing = {
    id,
    title: `knife stencil for the ${half} half, seen on its parting face`,
    subjects: [...new Set(channels.map((channel) => channel.id))],
    material: 'any stiff sheet',
    thickness: sheet,
    marks: [
      { layer: 'cut', outline: [circle([0, 0], disc.radius), ...cuts], texts: [] },
      { layer: 'engrave', outline: [...well, ...mark, ...label.engraved], texts: [] },
    ],
    estimated: false,
  };
  return { drawing, findings: label.findings };
}
