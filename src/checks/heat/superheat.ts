import { type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check, coldestMetalC } from '../../mold/index.ts';
import { alloyNamed } from '../../tables/index.ts';

/** How far over its liquidus metal is poured at least, K: less, and thin parts set before they are full. Common practice, no published source. */
const leastSuperheatK = 20;

interface SuperheatInput {
  readonly pourC: number;
  readonly solidusC?: number | undefined;
  readonly liquidusC?: number | undefined;
  readonly source: string;
  readonly estimated: boolean;
}

/** Whether the metal is wholly molten when it is poured, and by how much. */
export const superheat: Check = check<SuperheatInput>({
  id: 'superheat',
  title: 'Superheat of the metal',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ bench: { alloy }, placements }) => {
    const { pourC, name = '' } = alloy ?? {};
    if (placements.length === 0 || pourC === undefined || pourC < coldestMetalC) return [];
    const row = alloyNamed(name);
    const inTable = alloy?.liquidusC === undefined ? row?.liquidusC : undefined;
    const input = {
      pourC,
      solidusC: alloy?.solidusC ?? row?.solidusC?.value,
      liquidusC: alloy?.liquidusC ?? inTable?.value,
      source: inTable?.source.text ?? 'the plan',
      estimated: inTable?.source.kind === 'memory',
    };
    return [{ subject: 'alloy', about: [], input }];
  },
  run: ({ pourC, solidusC, liquidusC, source, estimated }) => {
    const cold = (limit: number): Finding =>
      finding('heat.pour-cold', { subject: 'alloy', values: { measured: pourC, limit } });
    if (liquidusC === undefined) {
      const values = { which: 'superheat', missing: ['alloy.liquidus'] } as const;
      const note = finding('heat.not-checked', { subject: 'alloy', values });
      return { findings: solidusC !== undefined && pourC <= solidusC ? [note, cold(solidusC)] : [note] };
    }
    const value = pourC - liquidusC;
    const figures = [
      makeFigure('heat.superheat', {
        subject: 'alloy',
        value,
        source: `pouring temperature less liquidus; liquidus: ${source}`,
        estimated,
      }),
    ];
    if (value < 0) return { findings: [cold(liquidusC)], figures };
    if (value >= leastSuperheatK) return { figures };
    const values = { measured: value, limit: leastSuperheatK, pour: pourC, liquidus: liquidusC };
    return { findings: [finding('heat.little-superheat', { subject: 'alloy', values })], figures };
  },
});
