import type { Finding } from '../findings/index.ts';
import {
  type Edited,
  expandPlacements,
  type ListChange,
  type Plan,
  type PlanChannel,
  placementsNamed,
  setInPlan,
  writeChannels,
} from '../plan/index.ts';

/** How much speed and pouring temperature (K) are changed at once: small steps, by common practice, no published source. */
const step = { faster: 1.05, slower: 0.95, hotterK: 10 };

/** The plan's text with what a rule proposes, comments kept; or in one sentence why that is not for the plan. */
export function takeInPlan(text: string, plan: Plan, said: Finding): Edited {
  switch (said.code) {
    case 'try.faster':
      return withSpeed(text, plan, step.faster);
    case 'try.slower':
      return withSpeed(text, plan, step.slower);
    case 'try.hotter-metal': {
      const { pourC } = plan.alloy ?? {};
      if (pourC === undefined) return { fault: 'The plan does not say how hot the metal is poured.' };
      return setInPlan(text, [{ path: 'alloy.pour', value: `${tidy(pourC + step.hotterK)} C` }]);
    }
    case 'try.open-gate':
      return withWiderGates(text, plan, said);
    case 'try.vent':
      return { fault: 'Where a vent can run is found by `discwright gate`, which writes it with --write.' };
    default:
      return { fault: 'This is done at the bench, not in the plan.' };
  }
}

function withSpeed(text: string, { spin }: Plan, factor: number): Edited {
  if (spin?.speedRpm !== undefined)
    return setInPlan(text, [{ path: 'spin.speed', value: `${Math.round(spin.speedRpm * factor)} rpm` }]);
  if (spin?.rimSpeedMS !== undefined)
    return setInPlan(text, [{ path: 'spin.rimSpeed', value: `${tidy(spin.rimSpeedMS * factor)} m/s` }]);
  return { fault: 'The plan does not say how fast the mold turns.' };
}

/** Gates of one master opened to a width, all else of them as it is; those as wide already stay. */
function withWiderGates(text: string, plan: Plan, { subject, values }: Finding): Edited {
  const { gates } = plan;
  if (typeof values.width !== 'number' || gates === undefined || gates === 'straight')
    return { fault: 'The plan does not say how wide these gates are.' };
  // Up, to a tenth of a millimeter.
  const width = Math.ceil(values.width * 10 - 1e-9) / 10;
  const flat = expandPlacements(plan);
  const mine = new Set(flat.filter(({ master }) => master === subject).map(({ id }) => id));
  const keeps: string[][] = [];
  const more: ListChange['more'][number][] = [];
  const inPlace: { path: string; value: string }[] = [];
  for (const [i, gate] of gates.entries()) {
    const ids = [...new Set(gate.placements.flatMap((name) => placementsNamed(flat, name)))];
    const opened = ids.filter((id) => mine.has(id) && !((gate.width ?? 0) >= width));
    const whole = opened.length === ids.length;
    keeps.push(whole ? ids : ids.filter((id) => !opened.includes(id)));
    if (opened.length === 0) continue;
    if (whole) inPlace.push({ path: `gates.${i + 1}.width`, value: `${width} mm` });
    else if (!isPlain(gate))
      return { fault: `The gate of ${subject} has a way of its own; widen it by hand.` };
    else more.push({ channel: { ...gate, placements: opened, width }, why: 'opened after a trial' });
  }
  if (more.length + inPlace.length === 0) return { fault: 'These gates are as wide as that already.' };
  const set = setInPlan(text, inPlace);
  if ('fault' in set || more.length === 0) return set;
  return writeChannels(set.text, {
    gates: { keeps, more },
    vents: { keeps: ventsAsTheyAre(plan), more: [] },
  });
}

/** Whether an entry of its own for some of its placements says all there is to it. */
const isPlain = (gate: PlanChannel): boolean =>
  !('from' in gate && gate.from) && !('land' in gate && gate.land) && typeof gate.path !== 'object';

const ventsAsTheyAre = (plan: Plan): string[][] =>
  Array.isArray(plan.vents)
    ? plan.vents.map(({ placements }) => [
        ...new Set(placements.flatMap((name: string) => placementsNamed(expandPlacements(plan), name))),
      ])
    : [];

const tidy = (value: number): string => String(Number(value.toFixed(2)));
