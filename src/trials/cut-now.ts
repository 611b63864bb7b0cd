import { expandPlacements, type Plan, type PlanChannel, placementsNamed } from '../plan/index.ts';
import type { Cut } from './log-schema.ts';

type Section = 'gates' | 'vents';

/** Gates and vents as the plan has them now, in its order; what the plan leaves open is left out. */
export const cutNow = (plan: Plan): Cut[] => [...cutIn(plan, 'gates'), ...cutIn(plan, 'vents')];

function cutIn(plan: Plan, section: Section): Cut[] {
  const list = plan[section];
  const kind = section === 'gates' ? 'gate' : 'vent';
  const flat = expandPlacements(plan);
  if (list === undefined || flat.length === 0) return [];
  if (list === 'straight') return [{ kind, of: flat.map(({ id }) => id), way: 'straight' }];
  return list.flatMap((channel): Cut[] => {
    const of = [...new Set(channel.placements.flatMap((name) => placementsNamed(flat, name)))];
    if (of.length === 0) return [];
    const { width, depth } = channel;
    return [
      {
        kind,
        of,
        ...(channel.entry && { at: entryText(channel.entry) }),
        ...wayOf(channel),
        ...(width !== undefined && { width }),
        ...(depth !== undefined && { depth }),
      },
    ];
  });
}

function entryText(entry: NonNullable<PlanChannel['entry']>): string {
  if ('end' in entry) return entry.end;
  if ('named' in entry) return entry.named;
  if ('angleRad' in entry) return `${tidy((entry.angleRad * 180) / Math.PI)} deg`;
  return `${tidy(entry.x)} ${tidy(entry.y)} mm`;
}

/** Way, shape and half in words: only told apart, never read again. */
function wayOf({ path, section, half, endWidth, endDepth }: PlanChannel): Pick<Cut, 'way'> {
  const words = [
    typeof path === 'string' ? path : path && JSON.stringify(path),
    section?.kind,
    half,
    ...[endWidth, endDepth].map((mm) => (mm === undefined ? undefined : `to ${tidy(mm)} mm`)),
  ].filter((word) => word !== undefined);
  return words.length === 0 ? {} : { way: words.join(', ').slice(0, 200) };
}

const tidy = (value: number): string => String(Number(value.toFixed(3)));
