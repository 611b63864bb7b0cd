import type { Point2 } from '../../geometry/index.ts';
import { heightAt } from '../../mold/index.ts';
import type { Pocket } from '../conditions.ts';
import { leastPocket } from '../pockets.ts';
import type { Listed } from './lists.ts';
import { airWith, channelsWith, entryAt, fitted, inMold, type Side, sideOf, type Trial } from './trial.ts';

/** Most vents of one cavity: where legs and claws each end blind, each takes one. Two count as few. Our own choice. */
const mostVents = 12;
/** Rounds in which vents are sought for what air the ones before left. */
const mostRounds = 3;
/** How far a place may be from the outline and from the parting surface for a vent to open into it, mm: about a cell of the forecast. */
const [nearOutline, nearSurface] = [1, 0.6];

/** Openings tried for one pocket, and how far they are from each other at least, mm. */
const [mostOpenings, openingsApart] = [4, 1.5];
/** Of so many a way is searched for, which takes long where there is none. */
const mostRouted = 2;

export interface ProposedVent {
  readonly listed: Listed;
  readonly side: Side;
  /** The air it lets out, mm3, and what shut it in. */
  readonly frees: Pick<Pocket, 'volume' | 'where' | 'sealedBy'>;
}

export const airIn = (pockets: readonly Pocket[]): number =>
  pockets.reduce((sum, { volume }) => sum + volume, 0);

/** Vents for all the air that stays behind a gate, as far as they find room and let any out. */
export function ventsFor(
  trial: Trial,
  gates: readonly Listed[],
  spec: Listed,
): { readonly vents: readonly ProposedVent[]; readonly air: number } {
  let vents: readonly ProposedVent[] = [];
  let pockets = airWith(trial, channelsWith(trial, gates, [])) ?? [];
  const tried = new Set<string>();
  for (let round = 0; round < mostRounds && pockets.length > 0; round++) {
    const before = vents.length;
    for (const pocket of pockets) {
      if (vents.length >= mostVents) break;
      const soFar = { gates, vents: vents.map(({ listed }) => listed) };
      const openings = openingsFor(trial, pocket);
      const ways = [
        ...openings.map((at) => ({ at, path: 'straight' as const })),
        ...openings.slice(0, mostRouted).map((at) => ({ at, path: 'routed' as const })),
      ];
      const found = firstOf(ways, ({ at, path }) => {
        const entry = entryAt(trial.kind[0], at);
        const key = JSON.stringify([entry, path]);
        if (tried.has(key)) return undefined;
        tried.add(key);
        const fit = fitted(trial, 'vent', soFar, spec, entry, [path]);
        return fit && { at, fit };
      });
      if (!found) continue;
      const { at, fit } = found;
      const { volume, where, sealedBy } = pocket;
      const side = sideOf(trial.kind[0], at);
      vents = [...vents, { listed: fit.listed, side, frees: { volume, where, sealedBy } }];
    }
    if (vents.length === before) break;
    pockets = airLeftBy(trial, gates, vents);
  }
  return pruned(trial, gates, vents, airIn(pockets));
}

function airLeftBy(
  trial: Trial,
  gates: readonly Listed[],
  vents: readonly ProposedVent[],
): readonly Pocket[] {
  const listed = vents.map((one) => one.listed);
  return airWith(trial, channelsWith(trial, gates, listed)) ?? [];
}

/** Without those that are not missed: the least first. */
function pruned(
  trial: Trial,
  gates: readonly Listed[],
  vents: readonly ProposedVent[],
  before: number,
): { readonly vents: readonly ProposedVent[]; readonly air: number } {
  let [kept, air] = [vents, before];
  const leastFirst = [...vents].sort((a, b) => a.frees.volume - b.frees.volume);
  for (const one of leastFirst) {
    const others = kept.filter((other) => other !== one);
    const left = airIn(airLeftBy(trial, gates, others));
    if (left < air + leastPocket) [kept, air] = [others, left];
  }
  return { vents: kept, air };
}

/** The first that comes to something, if any. */
function firstOf<T, U>(list: readonly T[], make: (one: T) => U | undefined): U | undefined {
  for (const one of list) {
    const made = make(one);
    if (made !== undefined) return made;
  }
  return undefined;
}

/**
 * Where on the outline a vent for a pocket may begin, best first: at the last sealed of its places that lie at the parting
 * surface and the outline, then at earlier ones some way off, for the first may be a corner without room; or nearest to
 * its last sealed place of all where it has none there.
 */
function openingsFor({ mold, kind, room, anew }: Trial, { cells, place }: Pocket): readonly Point2[] {
  const { id } = kind[0];
  const found: Point2[] = [];
  for (let k = cells.length - 1; k >= 0 && found.length < mostOpenings; k--) {
    const [x, y, z] = inMold(kind, room.middle(cells[k]));
    if (found.some(([u, v]) => Math.hypot(x - u, y - v) < openingsApart)) continue;
    if (Math.abs(z - heightAt(mold.parting, x, y)) > nearSurface) continue;
    const there = anew.onOutline(id, [x, y]);
    if (there && there.away <= nearOutline) found.push(there.at);
  }
  if (found.length > 0) return found;
  const [x, y] = inMold(kind, place);
  const nearest = anew.onOutline(id, [x, y]);
  return nearest ? [nearest.at] : [];
}
