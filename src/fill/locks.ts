import { atmospherePa, bondNumber, halfWidthAt } from '../physics/index.ts';
import { type Cells, middleOf, sides, wall } from './cells.ts';
import type { Conditions } from './conditions.ts';
import { type LockRule, lockLimits } from './lock.ts';
import { cornerDepth } from './necks.ts';
import { potentialAt, pressureUnder, pullAt } from './potential.ts';
import type { Section } from './section.ts';
import type { Stretch } from './stretches.ts';

/**
 * A narrow stretch that metal and air do not pass each other in. It `shuts` and holds the metal off, or its air `rises`:
 * metal runs to its end while the air comes up and stays under the mouth. Lengths in mm.
 */
export interface Lock {
  readonly cells: readonly number[];
  /** Steps from its mouth, for each of `cells`. */
  readonly steps: readonly number[];
  /** The first of its cells that metal comes to, and the cells before them that it comes from. */
  readonly mouth: readonly number[];
  readonly before: readonly number[];
  /** The section that decides: the tightest that must be passed. */
  readonly section: Section;
  readonly state: 'shuts' | 'rises';
}

/** What a stretch lets by: where metal comes over the edge of a mouth to it, and where it stands in such a leg already. */
interface Judged {
  readonly overEdge: boolean;
  readonly inLeg: boolean;
}

function judge(cells: Cells, { section }: Stretch, rule: LockRule, { field, metal }: Conditions): Judged {
  const [x, y] = middleOf(cells, section.at);
  const { small, large } = section;
  const bond = bondNumber(metal.densityKgM3, pullAt(field, x, y), large, metal.tensionNM);
  const { leg, edge } = lockLimits(rule, cells.planar ? 0 : small / large);
  return { overEdge: bond >= edge, inLeg: bond >= leg };
}

/** The locks of one narrow place: each stretch as metal meets it, from its mouth or from a gate in it. */
export function locksOf(
  cells: Cells,
  stretches: readonly Stretch[],
  rule: LockRule,
  conditions: Conditions,
): Lock[] {
  const judged = stretches.map((one) => judge(cells, one, rule, conditions));
  const passes = passing(stretches, judged);
  const stays = new Set([...stretches.keys()].filter((k) => !passes[k]));
  const locks: Lock[] = [];
  for (const group of groupsOf(stretches, stays)) {
    const isMouth = (k: number): boolean =>
      stretches[k].atMouth || stretches[k].beside.some((n) => passes[n]);
    const gated = group.some((k) => stretches[k].atGate);
    // Between a gate and what is open the metal's own way, which shuts as it is filled; what branches off it may lock.
    const way = gated && group.some(isMouth) ? wayThrough(stretches, group, isMouth) : undefined;
    const parts = way ? groupsOf(stretches, new Set(group.filter((k) => !way.has(k)))) : [group];
    for (const part of parts) locks.push(...lockAt(cells, stretches, part, judged, rule, conditions));
  }
  return locks;
}

/**
 * Metal that comes from what is open has the edge of a mouth to come over; out of a gate it stands in the narrow place
 * already.
 */
function passing(stretches: readonly Stretch[], judged: readonly Judged[]): boolean[] {
  const passes = stretches.map(() => false);
  const pass = (start: 'atMouth' | 'atGate', what: keyof Judged): void => {
    const met = new Set([...stretches.keys()].filter((k) => stretches[k][start] && judged[k][what]));
    for (const k of met) {
      passes[k] = true;
      for (const n of stretches[k].beside) if (judged[n][what]) met.add(n);
    }
  };
  pass('atMouth', 'overEdge');
  pass('atGate', 'inLeg');
  return passes;
}

/** Stretches of a set that are joined within it. */
function groupsOf(stretches: readonly Stretch[], all: ReadonlySet<number>): number[][] {
  const seen = new Set<number>();
  const groups: number[][] = [];
  for (const first of all) {
    if (seen.has(first)) continue;
    seen.add(first);
    const group = [first];
    for (const k of group)
      for (const n of stretches[k].beside)
        if (all.has(n) && !seen.has(n)) {
          seen.add(n);
          group.push(n);
        }
    groups.push(group);
  }
  return groups;
}

/** What is left when dead ends are taken off one by one, but for ends at the gate and where it is open. */
function wayThrough(
  stretches: readonly Stretch[],
  group: readonly number[],
  isMouth: (k: number) => boolean,
): ReadonlySet<number> {
  const way = new Set(group);
  const isEnd = (k: number): boolean =>
    !stretches[k].atGate && !isMouth(k) && stretches[k].beside.filter((n) => way.has(n)).length < 2;
  const ends = group.filter(isEnd);
  for (const k of ends) {
    if (!way.delete(k)) continue;
    ends.push(...stretches[k].beside.filter((n) => way.has(n) && isEnd(n)));
  }
  return way;
}

function lockAt(
  cells: Cells,
  stretches: readonly Stretch[],
  part: readonly number[],
  judged: readonly Judged[],
  rule: LockRule,
  conditions: Conditions,
): Lock[] {
  if (!part.some((k) => stretches[k].deep)) return [];
  const own = new Set(part);
  const gate = part.filter((k) => stretches[k].atGate);
  const first = part.filter((k) => stretches[k].atMouth || stretches[k].beside.some((n) => !own.has(n)));
  const entries = first.length > 0 ? first : gate;
  if (entries.length === 0) return [];
  const { section } = entries
    .map((k) => stretches[k])
    .reduce((a, b) => (b.section.large > a.section.large ? b : a));
  const ends = endsOf(
    cells,
    part.flatMap((k) => stretches[k].cells),
  );
  // Metal comes out of the gate into its cells.
  const mouth = first.length > 0 ? ends.mouth : gate.flatMap((k) => stretches[k].cells);
  const before = first.length > 0 ? ends.before : mouth;
  const length = lengthOf(
    cells,
    part.flatMap((k) => stretches[k].cells),
    mouth,
  );
  const opens = part.some((k) => stretches[k].atMouth || stretches[k].atGate);
  if (!opens && length <= cornerAt(cells, section, rule, conditions)) return [];
  const lock = (some: readonly number[], state: Lock['state']): Lock => ({
    cells: some.flatMap((k) => stretches[k].cells),
    steps: some.flatMap((k) => stretches[k].steps),
    mouth,
    before,
    section,
    state,
  });
  const reached = inLegFrom(stretches, own, entries, judged);
  if (reached.size === 0 || !isPushed(cells, section, mouth[0], length, conditions))
    return [lock(part, 'shuts')];
  const beyond = part.filter((k) => !reached.has(k));
  return [lock([...reached], 'rises'), ...(beyond.length > 0 ? [lock(beyond, 'shuts')] : [])];
}

/** What metal that has come over the edge comes to. */
function inLegFrom(
  stretches: readonly Stretch[],
  own: ReadonlySet<number>,
  entries: readonly number[],
  judged: readonly Judged[],
): ReadonlySet<number> {
  const reached = new Set(entries.filter((k) => judged[k].inLeg));
  for (const k of reached)
    for (const n of stretches[k].beside) if (own.has(n) && judged[n].inLeg) reached.add(n);
  return reached;
}

/** How deep a corner is under this rule. */
function cornerAt(cells: Cells, { at }: Section, rule: LockRule, { field, metal }: Conditions): number {
  const [x, y] = middleOf(cells, at);
  const bond = lockLimits(rule, 1).edge;
  return cornerDepth(halfWidthAt(bond, metal.densityKgM3, pullAt(field, x, y), metal.tensionNM), cells.cell);
}

/** Whether pressure pushes the face deeper than about half the width, down a leg that leads outward. */
function isPushed(
  cells: Cells,
  { small, at }: Section,
  mouth: number,
  length: number,
  { field, metal, wellLevel }: Conditions,
): boolean {
  const [there, before] = [middleOf(cells, at), middleOf(cells, mouth)].map((p) => potentialAt(field, ...p));
  const pressure = Math.max(0, pressureUnder(field, metal.densityKgM3, -wellLevel * wellLevel, before));
  return there <= before && (length * pressure) / (atmospherePa + pressure) > small;
}

/** The cells at its ends, and those outside beside them. */
function endsOf(
  { beside }: Cells,
  members: readonly number[],
): { readonly mouth: readonly number[]; readonly before: readonly number[] } {
  const own = new Set(members);
  const before = new Set<number>();
  const mouth = members.filter((c) => {
    let isEnd = false;
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n === wall || own.has(n)) continue;
      before.add(n);
      isEnd = true;
    }
    return isEnd;
  });
  return { mouth, before: [...before] };
}

/** Distance of the farthest cell from the middle of the mouth. */
function lengthOf(cells: Cells, members: readonly number[], mouth: readonly number[]): number {
  const sum = [0, 0, 0];
  for (const c of mouth) {
    const middle = middleOf(cells, c);
    for (let x = 0; x < 3; x++) sum[x] += middle[x] / mouth.length;
  }
  let far = 0;
  for (const c of members) {
    const [x, y, z] = middleOf(cells, c);
    far = Math.max(far, Math.hypot(x - sum[0], y - sum[1], z - sum[2]));
  }
  return far;
}
