import { finding } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';

interface InhibitionInput {
  readonly material: string;
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
  units: ({ bench, fixture: { material } }) => {
    const { compound } = bench.rubber ?? {};
    return [{ subject: 'mold', about: [], input: { material, ...(compound !== undefined && { compound }) } }];
  },
  run: ({ material, compound }) => {
    if (!inhibits.test(material)) return {};
    return {
      findings: [finding('heat.cure-inhibition', { subject: 'mold', values: { material, compound } })],
    };
  },
});
