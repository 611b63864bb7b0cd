import { finding } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { ownMaterial } from '../from-mold/index.ts';

interface InhibitionInput {
  readonly material: string;
  /** Whether the plan's own sheet calls it a resin. */
  readonly resin: boolean;
  readonly compound?: string;
}

/** What keeps silicone from curing on it; common practice, no published source. */
const inhibits = /\b(resin|sla|dlp|clay|plasticine|sulfur|sulphur|rubber|latex|epoxy|amine|nitrile)\b/i;

/** The face of the pattern plates, on which silicone or resin is poured. */
export const cureInhibition: Check = check<InhibitionInput>({
  id: 'cure-inhibition',
  title: 'Cure inhibition',
  follows: false,
  processes: ['poured'],
  units: (mold) => {
    const { material } = mold.fixture;
    const { compound } = mold.bench.rubber ?? {};
    const resin = ownMaterial(mold, material)?.kind === 'resin';
    return [
      { subject: 'mold', about: [], input: { material, resin, ...(compound !== undefined && { compound }) } },
    ];
  },
  run: ({ material, resin, compound }) => {
    if (!resin && !inhibits.test(material)) return {};
    return {
      findings: [finding('heat.cure-inhibition', { subject: 'mold', values: { material, compound } })],
    };
  },
});
