import type { UnitSystem } from '../findings/index.ts';

/**
 * The system a plan is written in: what its `units` says, else inch where the disc's diameter is given in inches or
 * feet. Takes the plan as plain values, whatever is wrong with it.
 */
export function systemOf(plan: unknown): UnitSystem {
  if (!isSection(plan)) return 'metric';
  if (plan.units === 'inch' || plan.units === 'metric') return plan.units;
  const diameter = isSection(plan.disc) ? plan.disc.diameter : undefined;
  return typeof diameter === 'string' && inInches.test(diameter.trim()) ? 'inch' : 'metric';
}

const inInches = /(["\u2033\u201d']|(^|[\d\s])(in|inch|inches|ft|foot|feet))$/i;

const isSection = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
