import { type Finding, finding } from '../findings/index.ts';
import { toRadians } from '../geometry/index.ts';
import {
  bossDefaults,
  type Plan,
  type PlanBoss,
  type RadiusSpec,
  resolveRadius,
  wherePlaces,
} from '../plan/index.ts';
import { capNut, hexNut, makingProcess } from '../tables/index.ts';
import type { Boss } from './mold.ts';

/** Root as deep and head as high as the width allows for a print that does not snap off. */
const rootShare = 0.5;
const headShare = { dome: 0.5, cone: 0.6, hexagon: 0.5 } as const;
/** A hexagon's top is at least this share of its foot: a thinner tip neither guides nor prints. */
const leastTop = 0.3;

/** Every boss of the plan in the mold frame; a size the tables of nuts lack, or one that leaves no head, is a stop. */
export function resolveBosses(plan: Plan): { bosses: Boss[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const bosses: Boss[] = [];
  for (const { id, spec, place } of placesOf(plan)) {
    const shape = shapeOf(spec);
    if (!shape) {
      findings.push(unknownNut(id, spec));
      continue;
    }
    const top = topShare(shape);
    if (top < leastTop) findings.push(tooPointed(id, spec, top));
    else bosses.push(resolveBoss(id, spec, place, shape, plan));
  }
  return { bosses, findings };
}

function unknownNut(id: string, spec: PlanBoss): Finding {
  const [nut, size] =
    spec.kind === 'cap nut'
      ? (['cap nut', spec.size] as const)
      : (['hexagon nut', 'across' in spec && 'thread' in spec.across ? spec.across.thread : ''] as const);
  return finding('layout.unknown-nut', { subject: id, values: { nut, size }, at: spec.at });
}

/** How wide a head is at its top against its foot; 1 where it has no leaning flats. */
const topShare = ({ headRadius, headHeight, headDraftRad = 0 }: BossShape): number =>
  1 - (headHeight * Math.tan(headDraftRad)) / headRadius;

const tooPointed = (id: string, spec: PlanBoss, share: number): Finding =>
  finding('layout.boss-pointed', {
    subject: id,
    values: { which: share > 0 ? 'narrow' : 'closed', measured: Math.max(0, share), limit: leastTop },
    at: spec.at,
  });

interface Place {
  readonly radius: RadiusSpec;
  readonly angleRad: number;
}

/**
 * Every boss on its own, in the plan's order. Those without an `id` are numbered through all of the plan; those of a
 * ring with an `id` have their number in the ring behind it.
 */
function placesOf(plan: Plan): { id: string; spec: PlanBoss; place: Place }[] {
  let number = 0;
  return (plan.registration?.bosses ?? []).flatMap((spec) => {
    const alone = 'position' in spec.where;
    const places = plan.disc.diameter < (spec.leastDisc ?? 0) ? [] : wherePlaces(spec.where, plan);
    return places.map((place, i) => {
      number++;
      const id = spec.id === undefined ? `boss-${number}` : alone ? spec.id : `${spec.id}-${i + 1}`;
      return { id, spec, place };
    });
  });
}

type BossShape = Pick<
  Boss,
  'kind' | 'size' | 'acrossFlats' | 'rootDepth' | 'headRadius' | 'headHeight' | 'headDraftRad'
>;

function resolveBoss(id: string, spec: PlanBoss, place: Place, shape: BossShape, plan: Plan): Boss {
  const radius = resolveRadius(place.radius, plan.disc.diameter / 2);
  const { angleRad } = place;
  return {
    id,
    ...shape,
    x: radius * Math.cos(angleRad),
    y: radius * Math.sin(angleRad),
    turnRad: spec.turnRad ?? bossDefaults.turnRad,
    ...socketOf(spec, plan),
    at: spec.at,
  };
}

/**
 * The sockets of rigid halves and the draft of loose cups: as the plan says, else by the process of the fixtures. What
 * is poured takes the shape of the bosses as they are.
 */
function socketOf({ clearance }: PlanBoss, { process, registration, fixture }: Plan) {
  if (process === 'poured') return { clearance: 0 };
  const made = fixture?.process && makingProcess(fixture.process);
  const draftRad = made ? toRadians(made.draftDeg.value) : bossDefaults.socketDraftRad;
  const given = clearance ?? registration?.clearance ?? made?.clearance.value ?? bossDefaults.clearance;
  return {
    clearance: process === 'rigid' ? given : 0,
    socketDraftRad: registration?.draft ?? draftRad,
  };
}

/** A size in mm as it is written on a boss: a share of a disc, or inches, leave digits behind that nobody makes. */
const sizeText = (mm: number): string => String(Number(mm.toFixed(3)));

/** Undefined where it names a nut the tables lack. */
function shapeOf(spec: PlanBoss): BossShape | undefined {
  switch (spec.kind) {
    case 'cap nut':
      return shapeOfNut(spec.size);
    case 'hexagon':
      return shapeOfHexagon(spec);
    default: {
      const { kind, diameter } = spec;
      return {
        kind,
        size: sizeText(diameter),
        acrossFlats: 0,
        rootDepth: spec.depth ?? rootShare * diameter,
        headRadius: diameter / 2,
        headHeight: spec.height ?? headShare[kind] * diameter,
      };
    }
  }
}

function shapeOfNut(size: string): BossShape | undefined {
  const nut = capNut(size);
  return (
    nut && {
      kind: 'cap nut',
      size: nut.size,
      acrossFlats: nut.acrossFlats,
      rootDepth: nut.hexHeight,
      headRadius: nut.domeDiameter / 2,
      headHeight: nut.height - nut.hexHeight,
    }
  );
}

/** After a nut its root is as deep as that is high, so that it sits where the nut would. */
function shapeOfHexagon(spec: Extract<PlanBoss, { kind: 'hexagon' }>): BossShape | undefined {
  const { across } = spec;
  const nut = 'thread' in across ? hexNut(across.thread) : undefined;
  const flats = 'thread' in across ? nut?.acrossFlats : across.flats;
  if (flats === undefined) return undefined;
  return {
    kind: 'hexagon',
    size: nut ? nut.size : sizeText(flats),
    acrossFlats: flats,
    rootDepth: spec.depth ?? nut?.height ?? rootShare * flats,
    headRadius: flats / 2,
    headHeight: spec.height ?? headShare.hexagon * flats,
    headDraftRad: spec.draftRad ?? bossDefaults.hexagonDraftRad,
  };
}
