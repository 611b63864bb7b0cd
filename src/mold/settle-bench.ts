import type { Plan, PlanBench } from '../plan/index.ts';

/** Bench and machine as the plan gives them; can and bolts that follow the disc have their diameters, mm. */
export function settleBench(plan: Plan): PlanBench {
  const { machine, rubber, alloy, spin, cure } = plan;
  const can = settleCan(plan);
  const closing = settleClosing(plan);
  return {
    ...(can && { can }),
    ...(closing && { closing }),
    ...(machine && { machine }),
    ...(rubber && { rubber }),
    ...(alloy && { alloy }),
    ...(spin && { spin }),
    ...(cure && { cure }),
  };
}

function settleCan({ can, disc }: Plan): PlanBench['can'] {
  if (can?.gap === undefined) return can;
  return { ...can, diameter: disc.diameter + can.gap };
}

function settleClosing({ closing, disc }: Plan): PlanBench['closing'] {
  const { bolts } = closing ?? {};
  if (!closing || bolts?.outsideRim === undefined) return closing;
  return { ...closing, bolts: { ...bolts, circle: disc.diameter + 2 * bolts.outsideRim } };
}
