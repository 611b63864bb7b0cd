import { type Finding, finding } from '../findings/index.ts';
import { bossDefaults, type Plan, type PlanBoss, resolveRadius } from '../plan/index.ts';
import { type CapNut, capNut } from '../tables/index.ts';
import type { Boss } from './mold.ts';

/** Domes and cones: root as deep and head as high as the diameter allows for a print that does not snap off. */
const rootShare = 0.5;
const headShare = { dome: 0.5, cone: 0.6 } as const;

/** Every boss of the plan in the mold frame; a size the table of cap nuts lacks is a stop. */
export function settleBosses(plan: Plan): { bosses: Boss[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const bosses: Boss[] = [];
  for (const [index, spec] of (plan.registration?.bosses ?? []).entries()) {
    const id = spec.id ?? `boss-${index + 1}`;
    const nut = spec.kind === 'cap nut' ? capNut(spec.size) : undefined;
    if (spec.kind === 'cap nut' && !nut) {
      const says = `There is no cap nut of size ${spec.size} in the tables.`;
      findings.push(finding('layout.unknown-nut', { subject: id, says, at: spec.at }));
      continue;
    }
    bosses.push(settleBoss(id, spec, nut, plan));
  }
  return { bosses, findings };
}

function settleBoss(id: string, spec: PlanBoss, nut: CapNut | undefined, plan: Plan): Boss {
  const radius = resolveRadius(spec.position.radius, plan.disc.diameter / 2);
  const { angleRad } = spec.position;
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
