import type { Finding } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import { layOut, type Master, type Mold } from '../mold/index.ts';
import { type Plan, readPlan } from '../plan/index.ts';
import type { Cache } from './cache.ts';
import type { FileAccess } from './files.ts';
import type { Progress } from './progress.ts';
import { readMaster } from './read-master.ts';
import { rememberIn } from './remember-in.ts';

export interface PlanSource {
  readonly bytes: Uint8Array;
  /** As shown in messages. */
  readonly name: string;
  readonly files: FileAccess;
}

export interface MoldOutcome {
  readonly plan?: Plan;
  /** Left out when the plan or a master cannot be read; the findings then hold at least one stop. */
  readonly mold?: Mold;
  readonly findings: readonly Finding[];
}

export interface ReadOptions {
  readonly cache?: Cache;
  readonly progress?: Progress;
}

/** Plan bytes to a laid-out mold: reads the plan, reads and mends its masters, places everything. */
export async function readMold(
  source: PlanSource,
  kernel: Kernel,
  { cache, progress }: ReadOptions = {},
): Promise<MoldOutcome> {
  const { plan, findings: planFindings } = readPlan(source.bytes, source.name);
  if (!plan) return { findings: planFindings };
  const findings = [...planFindings];
  const masters: Master[] = [];
  const wanted = Object.entries(plan.masters ?? {});
  const steps = wanted.length + 1;
  for (const [done, [id, spec]] of wanted.entries()) {
    progress?.({ title: `master ${id}`, done, total: steps });
    const outcome = await readMaster(id, spec, source.files, kernel, cache);
    findings.push(...outcome.findings);
    if (outcome.master) masters.push(outcome.master);
  }
  if (masters.length < wanted.length) return { plan, findings };
  progress?.({ title: 'layout and parting surface', done: wanted.length, total: steps });
  const laid = layOut(plan, masters, cache && rememberIn(cache));
  findings.push(...laid.findings);
  return { plan, mold: laid.mold, findings };
}
