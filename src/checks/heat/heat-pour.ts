import { type Finding, finding, makeFigure, type ReportPart } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { alloyNamed, type HeatRow, methodAPa, standsC } from '../../tables/index.ts';
import { heatOf, leftOut } from '../from-mold/index.ts';

interface PourInput {
  readonly process: Mold['process'];
  /** Rigid halves: what they are made of. Else the compound as the plan names it. */
  readonly material?: string;
  /** Rigid halves: what is known of that. */
  readonly row?: HeatRow;
  readonly makersLimitC?: number;
  readonly pourC?: number;
  /** Where the metal is molten, by plan or table: it is poured no cooler. */
  readonly moltenC?: number;
}

/** The pouring temperature against what the halves stand. */
export const heatOfPour: Check = check<PourInput>({
  id: 'heat-pour',
  title: 'Heat of the metal',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) =>
    mold.placements.length > 0 ? [{ subject: 'alloy', about: [], input: inputOf(mold) }] : [],
  run: (input) => {
    const { pourC, moltenC } = input;
    const missing = leftOut([
      ['alloy.pour', pourC],
      ...(input.process === 'rigid'
        ? ([['fixture.material', input.material]] as const)
        : ([['rubber.maxTemperature', input.material ?? input.makersLimitC]] as const)),
    ]);
    const damp = dampHalves(input);
    if (missing.length === 0 && pourC !== undefined) {
      const { findings = [], figures = [] } = underMetal(input, pourC);
      return { findings: [...damp, ...findings], figures };
    }
    const limit = halfLimit(input);
    if (limit && moltenC !== undefined && moltenC > limit.valueC)
      return { findings: [tooHot(input, 'melts', moltenC, limit.valueC)] };
    return { findings: [...damp, notKnown(input.process, missing)] };
  },
});

function inputOf(mold: Mold): PourInput {
  const { process, bench, fixture } = mold;
  const rigid = process === 'rigid';
  const made = fixture.assumed ? undefined : fixture.material;
  const material = rigid ? made : bench.rubber?.compound;
  const row = rigid && material !== undefined ? heatOf(mold, material) : undefined;
  const makersLimitC = rigid ? undefined : bench.rubber?.maxTemperatureC;
  const { pourC, name = '', liquidusC, solidusC } = bench.alloy ?? {};
  const listed = alloyNamed(name);
  const moltenC = liquidusC ?? solidusC ?? listed?.liquidusC?.value ?? listed?.solidusC?.value;
  return {
    process,
    ...(material !== undefined && { material }),
    ...(row && { row }),
    ...(makersLimitC !== undefined && { makersLimitC }),
    ...(pourC !== undefined && { pourC }),
    ...(moltenC !== undefined && { moltenC }),
  };
}

/** Rigid halves are made to be poured into: what is left out holds them back. Of rubber the halves are only a picture. */
const notKnown = (process: PourInput['process'], missing: readonly string[]): Finding =>
  process === 'rigid'
    ? finding('heat.pour-unknown', { subject: 'alloy', values: { missing } })
    : finding('heat.not-checked', { subject: 'alloy', values: { which: 'metal', missing } });

const tooHot = (
  { material }: PourInput,
  which: 'poured' | 'melts',
  measured: number,
  limit: number,
): Finding =>
  finding('heat.pour-too-hot', {
    subject: 'alloy',
    values: { which, measured, limit, ...(material && { material }) },
  });

function underMetal(input: PourInput, pourC: number): ReportPart {
  const { process, material = '', row } = input;
  const limit = halfLimit(input);
  if (!limit) {
    const about = { material, pour: pourC };
    const load = row?.limitC === undefined ? undefined : row.loadPa;
    const which = process !== 'rigid' ? 'compound' : row ? 'figure' : 'material';
    const values =
      load === undefined
        ? ({ which, ...about } as const)
        : ({ which: 'load', ...about, load, least: methodAPa } as const);
    return { findings: [finding('heat.half-unknown', { subject: 'alloy', values })] };
  }
  const { valueC, source, estimated } = limit;
  const figures = [makeFigure('heat.halfLimit', { subject: 'alloy', value: valueC, source, estimated })];
  if (pourC <= valueC) return { figures };
  return { findings: [tooHot(input, 'poured', pourC, valueC)], figures };
}

interface HalfLimit {
  readonly valueC: number;
  readonly source: string;
  readonly estimated: boolean;
}

function halfLimit({ process, row, makersLimitC }: PourInput): HalfLimit | undefined {
  if (makersLimitC !== undefined)
    return {
      valueC: makersLimitC,
      source: "rubber.maxTemperature of the plan, from the maker's sheet",
      estimated: false,
    };
  // What a kind of rubber stands differs from compound to compound: only its maker knows.
  if (process !== 'rigid') return undefined;
  const valueC = row && standsC(row);
  if (!row || valueC === undefined || (row.kind === 'plastic' && (row.loadPa ?? 0) < methodAPa))
    return undefined;
  const estimated = row.source.kind === 'memory';
  // A metal half is cold and many times heavier than the shot: it does not come near the temperature of the metal.
  if (row.name === 'aluminum') return { valueC: 582, source: `solidus; ${row.source.text}`, estimated };
  return { valueC, source: `${row.name}: ${row.source.text}`, estimated };
}

function dampHalves({ process, material, row, pourC }: PourInput): Finding[] {
  if (process !== 'rigid' || material === undefined || pourC === undefined) return [];
  if (row?.kind !== 'porous' && row?.name !== 'PA12') return [];
  return [finding('heat.damp', { subject: 'alloy', values: { material, pour: pourC } })];
}
