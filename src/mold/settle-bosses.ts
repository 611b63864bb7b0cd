import { type Finding, finding } from '../findings/index.ts';
import {
  bossDefaults,
  type Plan,
  type PlanBoss,
  type RadiusSpec,
  resolveRadius,
  ringPlaces,
} from '../plan/index.ts';
import { type CapNut, capNut } from '../tables/index.ts';
import type { Boss } from './mold.ts';

/** Domes and cones: root as deep and head as high as the diameter allows for a print that does not snap off. */
const rootShare = 0.5;
const headShare = { dome: 0.5, cone: 0.6 } as const;

/** Every boss of the plan in the mold frame; a size the table of cap nuts lacks is a stop. */
export function settleBosses(plan: Plan): { bosses: Boss[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const bosses: Boss[] = [];
  for (const { id, spec, place } of placesOf(plan)) {
    const nut = spec.kind === 'cap nut' ? capNut(spec.size) : undefined;
    if (spec.kind === 'cap nut' && !nut) {
      const says = `There is no cap nut of size ${spec.size} in the tables.`;
      findings.push(finding('layout.unknown-nut', { subject: id, says, at: spec.at }));
      continue;
    }
    bosses.push(settleBoss(id, spec, place, nut, plan));
  }
  return { bosses, findings };
}

interface Place {
  readonly radius: RadiusSpec;
  readonly angleRad: number;
}

/**
 * Every boss on its own, in the plan's order. Those without an `id` are numbered through all of the plan; those of a
 * ring with an `id` have their number in the ring behind it.
 */
function placesOf({ registration, disc }: Plan): { id: string; spec: PlanBoss; place: Place }[] {
  let number = 0;
  return (registration?.bosses ?? []).flatMap((spec) => {
    const alone = 'position' in spec.where;
    const places =
      'position' in spec.where ? [spec.where.position] : ringPlaces(spec.where.ring, disc.diameter / 2);
    return places.map((place, i) => {
      number++;
      const id = spec.id === undefined ? `boss-${number}` : alone ? spec.id : `${spec.id}-${i + 1}`;
      return { id, spec, place };
    });
  });
}

function settleBoss(id: string, spec: PlanBoss, place: Place, nut: CapNut | undefined, plan: Plan): Boss {
  const radius = resolveRadius(place.radius, plan.disc.diameter / 2);
  const { angleRad } = place;
  const clearance = spec.clearance ?? plan.registration?.clearance ?? bossDefaults.clearance;
  return {
    id,
    ...shapeOf(spec, nut),
    x: radius * Math.cos(angleRad),
    y: radius * Math.sin(angleRad),
    turnRad: spec.turnRad ?? bossDefaults.turnRad,
    clearance: plan.process === 'rigid' ? clearance : 0,
    at: spec.at,
  };
}

function shapeOf(spec: PlanBoss, nut: CapNut | undefined) {
  if (spec.kind === 'cap nut' || nut) {
    if (!nut || spec.kind !== 'cap nut') throw new Error(`boss ${spec.kind} without its table row`);
    return {
      kind: spec.kind,
      size: nut.size,
      acrossFlats: nut.acrossFlats,
      rootDepth: nut.hexHeight,
      headRadius: nut.domeDiameter / 2,
      headHeight: nut.height - nut.hexHeight,
    };
  }
  const { kind, diameter } = spec;
  return {
    kind,
    size: String(diameter),
    acrossFlats: 0,
    rootDepth: spec.depth ?? rootShare * diameter,
    headRadius: diameter / 2,
    headHeight: spec.height ?? headShare[kind] * diameter,
  };
}
