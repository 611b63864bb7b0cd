import type { Plan } from './plan.ts';

/** Paths of the masters' files as the plan writes them, each once. */
export function filesNamed(plan: Pick<Plan, 'masters'> | undefined): string[] {
  const paths = Object.values(plan?.masters ?? {}).flatMap((master) => {
    if (master.kind === 'mesh') return [master.file];
    return 'outline' in master.shape ? [master.shape.outline] : [];
  });
  return [...new Set(paths)];
}

/** Whether a path leads out of the folder it is written for, by its letters alone; an absolute one does. */
export function leadsOut(path: string): boolean {
  if (/^([/\\]|[A-Za-z]:)/.test(path)) return true;
  let depth = 0;
  for (const step of path.split(/[/\\]/)) {
    if (step === '..') depth--;
    else if (step !== '' && step !== '.') depth++;
    if (depth < 0) return true;
  }
  return false;
}
