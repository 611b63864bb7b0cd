import { type Finding, finding } from '../findings/index.ts';
import type { Point2 } from '../geometry/index.ts';
import { expandPlacements, type Plan, type PlanVentPin, placementsNamed } from '../plan/index.ts';
import { fixtureOutlines } from './channel-ways/fixture-outlines.ts';
import { leastGap } from './channel-ways/line.ts';
import { isInRing } from './channel-ways/ring.ts';
import { columnIn } from './column.ts';
import type { Mold, Sprue, VentPin } from './mold.ts';
import { heightAt, type PartingSurface } from './parting-surface.ts';
import type { PlacedMaster } from './resolve-placements.ts';

interface PinGround extends Pick<Mold, 'process' | 'disc' | 'bosses' | 'tabs' | 'notches' | 'bench'> {
  readonly sprue: Sprue | undefined;
  readonly placed: readonly PlacedMaster[];
  readonly wall: number;
}

/** A cavity that ends so near under a parting surface is open to it, mm. */
const touching = 0.02;

/** Holes through the halves into the cavities they stand over; what is wrong with one is a finding. */
export function resolvePins(
  plan: Plan,
  ground: PinGround,
  surface: PartingSurface,
): { readonly pins: readonly VentPin[]; readonly findings: readonly Finding[] } {
  const made = pinsWanted(plan).flatMap(({ id, spec, placement }) => {
    const at = placeOf(
      spec,
      ground.placed.find((one) => one.id === placement),
    );
    return at ? [pinAt(id, at, spec, ground, surface)] : [];
  });
  return {
    pins: made.map(({ pin }) => pin),
    // One that has to be moved anyway is not told to stand over nothing as well.
    findings: made.flatMap(({ pin, findings }) => {
      const judged = judge(pin, ground);
      return judged.length > 0 ? judged : findings;
    }),
  };
}

/** Every pin by its id, numbered as the plan lists them. */
export function pinsWanted(
  plan: Plan,
): { readonly id: string; readonly spec: PlanVentPin; readonly placement?: string }[] {
  const flat = expandPlacements(plan);
  return (plan.ventPins ?? [])
    .flatMap((spec) => {
      if ('at' in spec.where) return [{ spec }];
      const ids = new Set(spec.where.placements.flatMap((name) => placementsNamed(flat, name)));
      return flat.filter(({ id }) => ids.has(id)).map(({ id: placement }) => ({ spec, placement }));
    })
    .map((one, i) => ({ id: `pin-${i + 1}`, ...one }));
}

function placeOf({ where }: PlanVentPin, placed: PlacedMaster | undefined): Point2 | undefined {
  if ('at' in where) return [where.at.x, where.at.y];
  if (!placed) return undefined;
  const { x, y, turnRad, scale } = placed;
  const own = Math.atan2(y, x) + turnRad;
  const [c, s] = [scale * Math.cos(own), scale * Math.sin(own)];
  return [x + c * where.place.x - s * where.place.y, y + s * where.place.x + c * where.place.y];
}

function pinAt(
  id: string,
  [x, y]: Point2,
  { diameter, half }: PlanVentPin,
  { placed, disc }: PinGround,
  surface: PartingSurface,
): { readonly pin: VentPin; readonly findings: readonly Finding[] } {
  const up = half === 'upper' ? 1 : -1;
  const height = heightAt(surface, x, y);
  const pieces = placed
    .filter((one) => Math.hypot(one.x - x, one.y - y) <= one.reach)
    .flatMap(({ mesh }) => columnIn(mesh, x, y));
  // As the drill comes from the outer face: where the cavity begins, and where it ends.
  const [first] = pieces
    .map(([low, high]) => (up > 0 ? [high, low] : [-low, -high]))
    .filter(([begin]) => begin >= up * height - touching)
    .sort((a, b) => b[0] - a[0]);
  const [begin, end] = first ?? [up * height, up * height];
  const thickness = disc[half];
  // Into the cavity, so that it is sure to open into it; where there is none, out of the parting face.
  const reach = first ? thickness - (begin + end) / 2 : thickness - begin + 1;
  const pin: VentPin = { id, x, y, diameter, half, depth: thickness - begin, reach };
  if (first) return { pin, findings: [] };
  const about = { subject: id, place: [x, y, height] as const };
  const other = half === 'upper' ? 'lower' : 'upper';
  return {
    pin,
    findings: [
      pieces.length > 0
        ? finding('pins.wrong-half', { ...about, values: { half, other } })
        : finding('pins.hits-nothing', { ...about, values: { half } }),
    ],
  };
}

/** Whether it goes through something, or leaves less than a wall to it or to the rim. */
function judge({ id: subject, x, y, diameter }: VentPin, ground: PinGround): Finding[] {
  const { disc, wall, sprue } = ground;
  const about = { subject, place: [x, y, 0] as const };
  const out = disc.radius - Math.hypot(x, y) - diameter / 2;
  if (out < wall)
    return [finding('pins.rim', { ...about, values: { measured: Math.max(0, out), limit: wall } })];
  const well = sprue ? Math.hypot(x, y) - sprue.wellRadius - diameter / 2 : Number.POSITIVE_INFINITY;
  const gaps = fixtureOutlines(ground).map((one) => {
    const gap = leastGap(
      [
        [x, y],
        [x, y],
      ],
      [one],
    );
    return {
      other: one.id,
      thing: one.thing,
      gap: isInRing(one.outline, [x, y]) ? -gap : gap - diameter / 2,
    };
  });
  return [...gaps, { other: 'sprue', thing: 'sprue', gap: well } as const].flatMap(
    ({ other, thing, gap }) => {
      if (gap >= wall) return [];
      const values = { measured: Math.max(0, gap), limit: wall, other, thing };
      return [finding(gap <= 0 ? 'pins.through' : 'pins.near', { ...about, values })];
    },
  );
}
