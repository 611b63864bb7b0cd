import type { Withheld } from '../export/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { Drawing, Mold, PartOutput, Solid } from '../mold/index.ts';
import { judgePrintable, parts, splitToBed } from '../parts/index.ts';
import { type Failure, type RunOptions, runTasks } from './run-task.ts';
import { wholeMold } from './withhold.ts';

export interface Made {
  readonly solids: readonly Solid[];
  readonly drawings: readonly Drawing[];
  /** What could not be made. */
  readonly failed: readonly Withheld[];
  readonly findings: readonly Finding[];
  /** Names among `only` that fit nothing. */
  readonly unmatched: readonly string[];
}

export interface MakeOptions extends RunOptions {
  /** Stops found before: what fails of their subjects fails for them. */
  readonly stops?: readonly Finding[];
}

/**
 * All solids and drawings that the plan has made, or those whose id or whose part's id begins with one of `only`,
 * whatever the plan's own choice. Where neither chooses, what is of no use in this mold is left out.
 */
export function makeSolids(
  mold: Mold,
  kernel: Kernel,
  only: readonly string[] | undefined,
  { stops = [], ...options }: MakeOptions,
): Made {
  const fits = (name: string): string[] => (only ?? ['']).filter((start) => name.startsWith(start));
  const { make } = mold.fixture;
  const chosen = parts.filter(
    ({ id, unasked = always }) => only !== undefined || (make ? make.includes(id) : unasked(mold)),
  );
  const whole = new Set(chosen.filter(({ id }) => fits(id).length > 0).map(({ id }) => id));
  const met = new Set([...whole].flatMap(fits));
  // A name that is no part's may be a single solid's; then the other parts have to be run to find it.
  const single = (only ?? []).some((start) => !met.has(start));
  const run = runTasks(single ? parts : parts.filter(({ id }) => whole.has(id)), mold, { kernel }, options);
  const kept = run.done.map(({ task, output: { solids, drawings = [] } }) => {
    const wanted = ({ id }: { readonly id: string }): boolean => whole.has(task.id) || fits(id).length > 0;
    return { solids: solids.filter(wanted), drawings: drawings.filter(wanted) };
  });
  for (const { id } of kept.flatMap(({ solids, drawings }) => [...solids, ...drawings]))
    for (const start of fits(id)) met.add(start);
  const unmet = (only ?? []).filter((start) => !met.has(start));
  // A single solid that is not there may be one that failed.
  const failures = run.failures.filter(({ task }) => whole.has(task.id) || unmet.length > 0);
  const fitted = splitToBed(
    kept.flatMap(({ solids }) => solids),
    mold,
    kernel,
  );
  const named = namedApart(fitted.solids);
  const drawn = namedApart(kept.flatMap(({ drawings }) => drawings));
  const given = new Set(run.done.flatMap(({ task, output }) => (gives(output) ? [task.id] : [])));
  for (const { task } of failures) given.add(task.id);
  return {
    solids: named.things,
    drawings: drawn.things,
    failed: failures.map((failure) => withheldFor(failure, stops)),
    findings: [
      ...onceEach(
        run.done.filter(({ task }) => whole.has(task.id) || single).flatMap(({ output }) => output.findings),
      ),
      ...failures.flatMap((failure) =>
        reasonsOf(failure, stops).includes(failure.finding) ? failure.finding : [],
      ),
      ...fitted.findings,
      ...judgePrintable(fitted.solids, mold),
      ...(only ? [] : missing(make ?? [], given)),
      ...named.findings,
      ...drawn.findings,
    ],
    unmatched: failures.length > 0 ? [] : unmet,
  };
}

const always = (): boolean => true;

const gives = ({ solids, drawings = [] }: PartOutput): boolean => solids.length + drawings.length > 0;

/** A half and its blank bear one label, and say the same of it. */
const onceEach = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((one) => [JSON.stringify(one), one])).values(),
];

/** Kinds the plan wants made that this mold has none of. */
const missing = (wanted: readonly string[], given: ReadonlySet<string>): Finding[] =>
  [...new Set(wanted)]
    .filter((kind) => !given.has(kind))
    .map((kind) => finding('making.none', { subject: 'fixture', values: { kind } }));

/** The stops that say why, else that it failed. All that is made from the mold as a whole is made from the disc. */
function reasonsOf({ finding: failed }: Failure, stops: readonly Finding[]): readonly Finding[] {
  const from = failed.subject === wholeMold ? [wholeMold, 'disc'] : [failed.subject];
  const told = stops.filter(({ subject }) => from.includes(subject));
  return told.length > 0 ? told : [failed];
}

const withheldFor = (failure: Failure, stops: readonly Finding[]): Withheld => {
  const { task, finding: failed } = failure;
  const { subject } = failed;
  return {
    id: task.id,
    title: subject === wholeMold ? task.title : `${task.title} (${subject})`,
    subjects: [subject],
    reasons: reasonsOf(failure, stops),
  };
};

/**
 * Two solids (or drawings) of one id would be one file, on some systems also where only the case of letters differs: then the later
 * one gets a number, and that is said.
 */
function namedApart<T extends Solid | Drawing>(things: readonly T[]): { things: T[]; findings: Finding[] } {
  const taken = new Set(things.map(({ id }) => id.toLowerCase()));
  const seen = new Set<string>();
  const findings: Finding[] = [];
  const apart = things.map((thing) => {
    const name = thing.id.toLowerCase();
    if (!seen.has(name)) {
      seen.add(name);
      return thing;
    }
    let number = 2;
    while (taken.has(`${name}-${number}`)) number++;
    taken.add(`${name}-${number}`);
    const id = `${thing.id}-${number}`;
    findings.push(
      finding('solid.renamed', { subject: id, values: { title: thing.title, wanted: thing.id } }),
    );
    return { ...thing, id };
  });
  return { things: apart, findings };
}
