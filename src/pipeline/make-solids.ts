import type { Withheld } from '../export/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import type { Kernel, Solid } from '../kernel/index.ts';
import type { Mold } from '../mold/index.ts';
import { parts } from '../parts/index.ts';
import { type Failure, type RunOptions, runWorks } from './run-work.ts';
import { wholeMold } from './withhold.ts';

export interface Made {
  readonly solids: readonly Solid[];
  /** What could not be made. */
  readonly failed: readonly Withheld[];
  readonly findings: readonly Finding[];
  /** Names among `only` that fit nothing. */
  readonly unmatched: readonly string[];
}

/** All solids of the mold, or those whose id or whose part's id begins with one of `only`. */
export function makeSolids(
  mold: Mold,
  kernel: Kernel,
  only: readonly string[] | undefined,
  options: RunOptions,
): Made {
  const fits = (name: string): string[] => (only ?? ['']).filter((start) => name.startsWith(start));
  const whole = new Set(parts.filter(({ id }) => fits(id).length > 0).map(({ id }) => id));
  const met = new Set([...whole].flatMap(fits));
  // A name that is no part's may be a single solid's; then the other parts have to be run to find it.
  const single = (only ?? []).some((start) => !met.has(start));
  const run = runWorks(single ? parts : parts.filter(({ id }) => whole.has(id)), mold, { kernel }, options);
  const kept = run.done.flatMap(({ work, output }) =>
    output.solids.filter(({ id }) => whole.has(work.id) || fits(id).length > 0),
  );
  for (const { id } of kept) for (const start of fits(id)) met.add(start);
  const unmet = (only ?? []).filter((start) => !met.has(start));
  // A single solid that is not there may be one that failed.
  const failures = run.failures.filter(({ work }) => whole.has(work.id) || unmet.length > 0);
  const named = namedApart(kept);
  return {
    solids: named.solids,
    failed: failures.map(withheldFor),
    findings: [
      ...run.done.filter(({ work }) => whole.has(work.id) || single).flatMap(({ output }) => output.findings),
      ...failures.map((failure) => failure.finding),
      ...named.findings,
    ],
    unmatched: failures.length > 0 ? [] : unmet,
  };
}

const withheldFor = ({ work, finding: { subject, says } }: Failure): Withheld => ({
  id: work.id,
  title: subject === wholeMold ? work.title : `${work.title} (${subject})`,
  subjects: [subject],
  reasons: [says],
});

/**
 * Two solids of one id would be one file, on some systems also where only the case of letters differs: then the later
 * one gets a number, and that is said.
 */
function namedApart(solids: readonly Solid[]): { solids: Solid[]; findings: Finding[] } {
  const taken = new Set(solids.map(({ id }) => id.toLowerCase()));
  const seen = new Set<string>();
  const findings: Finding[] = [];
  const apart = solids.map((solid) => {
    const name = solid.id.toLowerCase();
    if (!seen.has(name)) {
      seen.add(name);
      return solid;
    }
    let number = 2;
    while (taken.has(`${name}-${number}`)) number++;
    taken.add(`${name}-${number}`);
    const id = `${solid.id}-${number}`;
    const says = `The ${solid.title} is called ${id}, since another solid is called ${solid.id} already.`;
    findings.push(finding('solid.renamed', { subject: id, says }));
    return { ...solid, id };
  });
  return { solids: apart, findings };
}
