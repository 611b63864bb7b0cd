import type { Disc, Sprue } from '../mold.ts';
import { mostRounding } from './revolved.ts';
import { leastWall, shaftRadius, spigotChamfer, spigotOf, wellFloorRadius } from './sprue.ts';

/** What keeps a sprue form from being made, and the most or least that would not, mm. */
export interface SprueFault {
  readonly which:
    | 'closed'
    | 'well-narrow'
    | 'well-rim'
    | 'well-closed'
    | 'dome-high'
    | 'dome-steep'
    | 'dome-wide'
    | 'fillet-well'
    | 'fillet-mouth'
    | 'plug'
    | 'spigot'
    | 'spigot-wall'
    | 'spigot-deep'
    | 'puller';
  readonly measured: number;
  readonly limit: number;
}

type Rule = SprueFault & { readonly holds: boolean };

const broken = (rules: readonly Rule[]): SprueFault[] =>
  rules.filter(({ holds }) => !holds).map(({ holds: _, ...fault }) => fault);

const less = (which: SprueFault['which'], measured: number, limit: number): Rule => ({
  which,
  measured,
  limit,
  holds: measured < limit,
});

const more = (which: SprueFault['which'], measured: number, limit: number): Rule => ({
  which,
  measured,
  limit,
  holds: measured > limit,
});

/** Why the form's recess cannot be cut; nothing where it can. Dome and fillets are judged only in a well that is one. */
export function recessFaults(sprue: Sprue, disc: Pick<Disc, 'radius' | 'upper'>): SprueFault[] {
  const top = shaftRadius(sprue, disc.upper);
  const floor = wellFloorRadius(sprue);
  const faults = broken([
    more('closed', 2 * top, 0),
    more('well-narrow', 2 * sprue.wellRadius, 2 * sprue.holeRadius),
    less('well-rim', 2 * sprue.wellRadius, 2 * (disc.radius - leastWall)),
    more('well-closed', 2 * floor, 0),
    ...(hasDome(sprue) && floor > 0 && sprue.wellRadius > sprue.holeRadius
      ? [
          less('dome-high', sprue.domeHeight, sprue.wellDepth),
          // A half ball is steepest of what can be pulled.
          {
            ...less('dome-steep', sprue.domeHeight, sprue.domeRadius),
            holds: sprue.domeHeight <= sprue.domeRadius,
          },
          less('dome-wide', 2 * sprue.domeRadius, 2 * floor),
        ]
      : []),
  ]);
  return faults.length > 0 ? faults : broken(filletRules(sprue, disc.upper, top, floor));
}

const hasDome = ({ domeHeight, domeRadius }: Sprue): boolean => domeHeight > 0 && domeRadius > 0;

function filletRules(sprue: Sprue, upper: number, top: number, floor: number): Rule[] {
  const { fillet, wellRadius, wellDepth, holeRadius } = sprue;
  if (!(fillet > 0)) return [];
  const dish = hasDome(sprue) ? sprue.domeRadius : 0;
  const inWell = mostRounding([dish, -wellDepth], [floor, -wellDepth], [wellRadius, 0]);
  const atMouth = mostRounding([wellRadius, 0], [holeRadius, 0], [top, upper]);
  return [less('fillet-well', fillet, inWell), less('fillet-mouth', fillet, atMouth)];
}

/** The sprue form where its recess can be cut; a stop about it withholds what goes without. */
export const soundSprue = <S extends Sprue>({
  sprue,
  disc,
}: {
  readonly sprue?: S | undefined;
  readonly disc: Pick<Disc, 'radius' | 'upper'>;
}): S | undefined => (sprue && recessFaults(sprue, disc).length === 0 ? sprue : undefined);

/** Left under the puller hole of a plug, which is shorter than the form, mm. */
export const plugFloor = 2;

/** Why form or plug cannot be made though the recess can be cut: `clearance` is the plug's and the spigot's. */
export function formFaults(sprue: Sprue, upper: number, clearance: number): SprueFault[] {
  const top = shaftRadius(sprue, upper);
  const { radius, height } = spigotOf(sprue, upper);
  const tall = upper + sprue.grip;
  return broken([
    more('plug', 2 * top, 2 * clearance),
    ...(sprue.pieces === 'two'
      ? [
          more('spigot', Math.min(radius, height), spigotChamfer),
          more('spigot-wall', top - radius - clearance, leastWall),
          more('spigot-deep', tall - height - clearance, leastWall),
        ]
      : []),
    ...(sprue.puller ? [more('puller', tall, plugFloor)] : []),
  ]);
}
