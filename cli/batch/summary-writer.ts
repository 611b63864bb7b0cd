import type { VariantRow } from './variant-row.ts';

/** One kind of summary, written row by row so that none is held. */
export interface SummaryWriter {
  readonly file: string;
  head(paths: readonly string[], title: string): string;
  row(row: VariantRow, paths: readonly string[], isFirst: boolean): string;
  foot(): string;
}
