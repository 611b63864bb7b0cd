import { type Finding, finding, makeFigure, type ReportPart } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { heatRow, rubberHeat, standsC } from '../../tables/index.ts';

interface PourInput {
  readonly process: Mold['process'];
  /** Rigid halves: what they are made of. Else the compound as the plan names it. */
  readonly material?: string;
  readonly makersLimitC?: number;
  readonly pourC?: number;
}

/** The pouring temperature against what the halves stand. */
export const heatOfPour: Check = check<PourInput>({
  id: 'heat-pour',
  title: 'Heat of the metal',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: ({ process, bench, fixture, placements }) => {
    if (placements.length === 0) return [];
    const material = process === 'rigid' ? fixture.material : bench.rubber?.compound;
    const makersLimitC = process === 'rigid' ? undefined : bench.rubber?.maxTemperatureC;
    const pourC = bench.alloy?.pourC;
    const input = {
      process,
      ...(material !== undefined && { material }),
      ...(makersLimitC !== undefined && { makersLimitC }),
      ...(pourC !== undefined && { pourC }),
    };
    return [{ subject: 'alloy', about: [], input }];
  },
  run: (input) => {
    const damp = dampHalves(input);
    const { pourC, material, makersLimitC } = input;
    const missing = [
      ...(pourC === undefined ? ['alloy.pour'] : []),
      ...(material === undefined && makersLimitC === undefined ? ['rubber.maxTemperature'] : []),
    ];
    if (pourC === undefined || missing.length > 0) {
      const values = { which: 'metal', missing } as const;
      return { findings: [...damp, finding('heat.not-checked', { subject: 'alloy', values })] };
    }
    const { findings = [], figures = [] } = underMetal(input, pourC);
    return { findings: [...damp, ...findings], figures };
  },
});

function underMetal({ process, material = '', makersLimitC }: PourInput, pourC: number): ReportPart {
  const limit = halfLimit(process, material, makersLimitC);
  if (!limit) {
    const which = process !== 'rigid' ? 'compound' : heatRow(material) ? 'figure' : 'material';
    const values = { which, material, pour: pourC } as const;
    return { findings: [finding('heat.half-unknown', { subject: 'alloy', values })] };
  }
  const { valueC, source, estimated } = limit;
  const figures = [makeFigure('heat.halfLimit', { subject: 'alloy', value: valueC, source, estimated })];
  if (pourC <= valueC) return { figures };
  const hot = finding('heat.pour-too-hot', {
    subject: 'alloy',
    values: { measured: pourC, limit: valueC, ...(material && { material }) },
  });
  return { findings: [hot], figures };
}

interface HalfLimit {
  readonly valueC: number;
  readonly source: string;
  readonly estimated: boolean;
}

function halfLimit(
  process: PourInput['process'],
  material: string,
  makersC: number | undefined,
): HalfLimit | undefined {
  if (makersC !== undefined)
    return {
      valueC: makersC,
      source: "rubber.maxTemperature of the plan, from the maker's sheet",
      estimated: false,
    };
  if (process !== 'rigid') {
    const row = rubberHeat(material);
    return row && { valueC: row.limitC, source: row.source.text, estimated: true };
  }
  const row = heatRow(material);
  const valueC = row && standsC(row);
  if (!row || valueC === undefined) return undefined;
  const estimated = row.source.kind === 'memory';
  // A metal half is cold and many times heavier than the shot: it does not come near the temperature of the metal.
  if (row.name === 'aluminum') return { valueC: 582, source: `solidus; ${row.source.text}`, estimated };
  return { valueC, source: `${row.name}: ${row.source.text}`, estimated };
}

function dampHalves({ process, material, pourC }: PourInput): Finding[] {
  if (process !== 'rigid' || material === undefined || pourC === undefined) return [];
  const row = heatRow(material);
  if (row?.kind !== 'porous' && row?.name !== 'PA12') return [];
  return [finding('heat.damp', { subject: 'alloy', values: { material, pour: pourC } })];
}
