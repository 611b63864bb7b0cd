import type { PlanBench } from '../plan/index.ts';

type Given = NonNullable<PlanBench['closing']>;
type Counted<T extends { readonly count?: unknown }> = Omit<T, 'count'> & { readonly count: number };
type Lid = NonNullable<Given['lid']>;

/** What holds the can shut, as many and as thick as the plan's rules make them. */
export type Closing = Omit<Given, 'bolts' | 'clamps' | 'lid'> & {
  readonly bolts?: Counted<Omit<NonNullable<Given['bolts']>, 'spacing'>> | undefined;
  readonly clamps?: Counted<NonNullable<Given['clamps']>> | undefined;
  readonly lid?: (Omit<Lid, 'thickness'> & { readonly thickness?: number | undefined }) | undefined;
};

/** Can, closing, machine, rubber, alloy, spin, cure, pouring, order and prices as the plan has them, its rules worked out; no defaults. */
export type Bench = Omit<PlanBench, 'closing'> & { readonly closing?: Closing };
