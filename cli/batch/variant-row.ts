import type { Build, Json } from '../../src/export/index.ts';
import type { FigureName, Finding, Severity, Unit } from '../../src/findings/index.ts';
import type { Setting } from '../../src/plan/index.ts';
import { keyFiguresOf } from './key-figures.ts';
import type { Variant } from './variant.ts';

/** What the summary says of one variant; kept in the variant's own folder, so that any machine can add its share. */
export interface VariantRow {
  readonly name: string;
  readonly settings: readonly Setting[];
  /** False where no mold came of it, or none of what was asked for. */
  readonly built: boolean;
  readonly stops: number;
  readonly warnings: number;
  readonly notes: number;
  readonly solids: number;
  readonly drawings: number;
  readonly withheld: number;
  readonly figures: readonly RowFigure[];
  /** What is still open: stops and warnings, stops first. */
  readonly open: readonly OpenFinding[];
  /** Whether there is an overview.png. */
  readonly picture: boolean;
}

export interface RowFigure {
  readonly name: FigureName;
  readonly subject: string;
  readonly value: number;
  readonly unit: Unit;
  readonly estimated: boolean;
}

export type OpenFinding = Pick<Finding, 'code' | 'severity' | 'subject' | 'says'>;

export function builtRow(variant: Variant, build: Build, picture: boolean): VariantRow {
  const { report, solids, drawings, withheld } = build;
  return {
    ...verdict(variant, report.findings),
    built: true,
    solids: solids.length,
    drawings: drawings.length,
    withheld: withheld.length,
    figures: keyFiguresOf(report).map(({ name, subject, value, unit, estimated }) => ({
      name,
      subject,
      value,
      unit,
      estimated,
    })),
    picture,
  };
}

export const unbuiltRow = (variant: Variant, findings: readonly Finding[]): VariantRow => ({
  ...verdict(variant, findings),
  built: false,
  solids: 0,
  drawings: 0,
  withheld: 0,
  figures: [],
  picture: false,
});

function verdict({ name, settings }: Variant, findings: readonly Finding[]) {
  const of = (wanted: Severity) => findings.filter(({ severity }) => severity === wanted);
  const [stops, warnings] = [of('stop'), of('warn')];
  const open = [...stops, ...warnings].map(({ code, severity, subject, says }) => ({
    code,
    severity,
    subject,
    says,
  }));
  return {
    name,
    settings,
    stops: stops.length,
    warnings: warnings.length,
    notes: of('note').length,
    open,
  };
}

/** In the order a summary gives it. */
export const rowJson = (row: VariantRow): Json => ({
  name: row.name,
  settings: row.settings.map(({ path, value }) => ({ path, value })),
  built: row.built,
  stops: row.stops,
  warnings: row.warnings,
  notes: row.notes,
  solids: row.solids,
  drawings: row.drawings,
  withheld: row.withheld,
  figures: row.figures.map(({ name, subject, value, unit, estimated }) => ({
    name,
    subject,
    value,
    unit,
    estimated,
  })),
  open: row.open.map(({ code, severity, subject, says }) => ({ code, severity, subject, says })),
  picture: row.picture,
});

/** What a variant sets a field to, as written; empty where it leaves the plan's value. */
export const settingOf = ({ settings }: VariantRow, path: string): string =>
  settings.find((one) => one.path === path)?.value ?? '';

/** In a word or two. */
export const stateOf = ({ built, stops }: VariantRow): string =>
  built ? (stops > 0 ? 'has stops' : 'fine') : 'not built';
