import { type Finding, finding, type Judged } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { preloadAllowed } from '../../physics/index.ts';
import { bolt, preloadShare, threadDiameter } from '../../tables/index.ts';
import { byPlan, closingFigure } from './can-figure.ts';
import { tightening } from './can-tightening.ts';

export type Bolts = Omit<NonNullable<NonNullable<Mold['bench']['closing']>['bolts']>, 'circle'>;

/** The load on the bolts: the force that opens the can, N, and whether they share it with clamps. */
export interface BoltLoad {
  readonly force: number | undefined;
  readonly underClamps: boolean;
}

const subject = 'closing';
const none: Judged = { findings: [], figures: [] };

/**
 * Bolts that draw the can shut are not counted as holding. Left in under clamps they share the load by stiffness, and
 * how stiff the clamps are nobody knows: so they are to stand it all, on top of what they are tightened to.
 */
export function judgeBolts(given: Bolts | undefined, { force, underClamps }: BoltLoad): Judged {
  if (!given) return none;
  const { size, grade, count, tension } = given;
  if (grade === undefined) {
    const values = { missing: ['closing.bolts.grade'] };
    return { ...none, findings: [finding('closing.not-checked', { subject, values })] };
  }
  const row = bolt(size, grade);
  if (!row)
    return { ...none, findings: [finding('closing.bolt-unknown', { subject, values: { size, grade } })] };
  const proof = row.proofN;
  const shared = force !== undefined && underClamps && given.cure !== 'taken out';
  const added = shared ? force / count : 0;
  const preload = tension ?? preloadAllowed(proof, preloadShare.value, added);
  const source = row.source.text;
  return {
    findings: strained({ proof, tension, added, count }),
    figures: [
      closingFigure('closing.bolts', count, byPlan),
      closingFigure('closing.boltProof', proof, source),
      ...(force === undefined
        ? []
        : [closingFigure('closing.boltShare', force / (count * proof), `${source}; ${allOfIt}`)]),
      ...(shared ? [closingFigure('closing.boltLoad', (tension ?? 0) + added, onTop)] : []),
      ...tightening('bolt', preload, threadDiameter(size), tension === undefined ? atMost : byPlan),
    ],
  };
}

const allOfIt = "share of all bolts' proof load if the clamps let go";
const onTop =
  'what it is tightened to and, as the cautious bound, all of the force that opens the can over all bolts';
const atMost = `${preloadShare.source.text}; less where its share of the cure's load comes on top`;

interface Strain {
  readonly proof: number;
  readonly tension: number | undefined;
  readonly added: number;
  readonly count: number;
}

function strained({ proof, tension = 0, added, count }: Strain): Finding[] {
  if (tension > proof)
    return [finding('closing.bolt-tension', { subject, values: { measured: tension, limit: proof } })];
  const measured = tension + added;
  if (measured <= proof) return [];
  const values = { measured, limit: proof, share: measured / proof, count };
  return [finding('closing.bolts-past-proof', { subject, values })];
}
