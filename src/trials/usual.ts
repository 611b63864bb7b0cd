import { speedForRim } from '../physics/index.ts';
import type { Plan } from '../plan/index.ts';

/** What the plan means to do, as it is offered for a pour; a bare number of it has these units. */
export const usualOf = ({
  spin,
  alloy,
  disc,
}: Plan): { readonly speed?: string; readonly metal?: string } => {
  const rpm =
    spin?.speedRpm ??
    (spin?.rimSpeedMS === undefined
      ? undefined
      : Math.round(speedForRim(spin.rimSpeedMS, disc.diameter / 2)));
  return {
    ...(rpm !== undefined && { speed: `${tidy(rpm)} rpm` }),
    ...(alloy?.pourC !== undefined && { metal: `${tidy(alloy.pourC)} C` }),
  };
};

const tidy = (value: number): string => String(Number(value.toFixed(1)));
