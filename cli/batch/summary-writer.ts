import type { UnitSystem } from '../../src/findings/index.ts';
import type { VariantRow } from './variant-row.ts';

/** One kind of summary, written row by row so that none is held. */
export interface SummaryWriter {
  readonly file: string;
  /** `units`: the system the plan is written in, whatever a variant is. */
  head(paths: readonly string[], title: string, units: UnitSystem): string;
  row(row: VariantRow, paths: readonly string[], isFirst: boolean, units: UnitSystem): string;
  foot(): string;
}
