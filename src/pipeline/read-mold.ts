import type { Finding, UnitSystem } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import { type Master, type Mold, resolveLayout } from '../mold/index.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import type { Cache } from './cache.ts';
import type { FileAccess } from './files.ts';
import { fitMemory } from './fit-memory.ts';
import { inPlan } from './in-plan.ts';
import { memoizeIn } from './memoize-in.ts';
import type { Progress } from './progress.ts';
import { readMaster } from './read-master.ts';

export interface PlanSource {
  readonly bytes: Uint8Array;
  /** As shown in messages: what the person typed, with the file of a folder added. */
  readonly name: string;
  readonly files: FileAccess;
}

export interface MoldOutcome {
  readonly plan?: Plan;
  /** Left out when the plan or a master cannot be read; the findings then hold at least one stop. */
  readonly mold?: Mold;
  readonly findings: readonly Finding[];
  /** The system the plan is written in. */
  readonly units: UnitSystem;
}

export interface ReadOptions {
  readonly cache?: Cache;
  readonly progress?: Progress;
}

/** A plan with its masters, not laid out yet. */
export interface MastersOutcome {
  readonly plan?: Plan;
  /** Left out when the plan or one of its masters cannot be read; the findings then hold at least one stop. */
  readonly masters?: readonly Master[];
  readonly findings: readonly Finding[];
  readonly units: UnitSystem;
}

/** Plan bytes to a laid-out mold: reads the plan, reads and repairs its masters, places everything. */
export async function readMold(
  source: PlanSource,
  kernel: Kernel,
  options: ReadOptions = {},
): Promise<MoldOutcome> {
  const { plan, masters, findings, units } = await readMasters(source, kernel, options);
  if (!plan) return { findings, units };
  if (!masters) return { plan, findings, units };
  options.progress?.({
    title: 'layout and parting surface',
    done: masters.length,
    total: masters.length + 1,
  });
  return placeMold(plan, masters, findings, options);
}

/** The first half of `readMold`: the plan, and its masters read and repaired. */
export async function readMasters(
  source: PlanSource,
  kernel: Kernel,
  { cache, progress }: ReadOptions = {},
): Promise<MastersOutcome> {
  const { plan, findings: planFindings, units } = readPlan(source.bytes, source.name);
  if (!plan) return { findings: planFindings, units };
  const findings = [...planFindings];
  const masters: Master[] = [];
  const wanted = Object.entries(plan.masters ?? {});
  for (const [done, [id, spec]] of wanted.entries()) {
    progress?.({ title: `master ${id}`, done, total: wanted.length + 1 });
    const outcome = await readMaster(id, spec, source.files, kernel, cache);
    findings.push(...outcome.findings);
    if (outcome.master) masters.push(outcome.master);
  }
  if (masters.length < wanted.length) return { plan, findings, units };
  const fitted = fitMemory(plan, masters, kernel);
  return { plan, ...fitted, findings: [...findings, ...inFile(fitted.findings, plan)], units };
}

/** With the place of its master in the plan's text. */
const inFile = (findings: readonly Finding[], { masters = {} }: Plan): Finding[] =>
  findings.map((one) => ({ ...one, ...(masters[one.subject]?.at && { at: masters[one.subject]?.at }) }));

/** The second half of `readMold`: places everything and finds the parting surface. `found` goes before what it finds. */
export function placeMold(
  plan: Plan,
  masters: readonly Master[],
  found: readonly Finding[],
  { cache }: Pick<ReadOptions, 'cache'> = {},
): MoldOutcome & { readonly mold: Mold } {
  const laid = resolveLayout(plan, masters, cache && memoizeIn(cache));
  const { mold } = laid;
  return { plan, mold, findings: [...found, ...inPlan(laid.findings, mold)], units: mold.units };
}
