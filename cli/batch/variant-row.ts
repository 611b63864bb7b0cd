import type { Build, Json } from '../../src/export/index.ts';
import {
  causesByCode,
  type FigureName,
  type Finding,
  type Severity,
  type Unit,
  type UnitSystem,
} from '../../src/findings/index.ts';
import type { Setting } from '../../src/plan/index.ts';
import { sayCause } from '../../src/wording/index.ts';
import { keyFiguresOf } from './key-figures.ts';
import type { Variant } from './variant.ts';

/** What the summary says of one variant; kept in the variant's own folder, so that any machine can add its share. */
export interface VariantRow {
  readonly name: string;
  readonly settings: readonly Setting[];
  /** The system its plan is written in. */
  readonly units: UnitSystem;
  /** False where no mold came of it, or none of what was asked for. */
  readonly built: boolean;
  readonly stops: number;
  readonly warnings: number;
  readonly notes: number;
  readonly solids: number;
  readonly drawings: number;
  readonly withheld: number;
  readonly figures: readonly RowFigure[];
  /** What is still open: the causes of stops and warnings, stops first; single findings are in the variant's report. */
  readonly open: readonly OpenFinding[];
  /** Whether there is an overview. */
  readonly picture: boolean;
}

export interface RowFigure {
  readonly name: FigureName;
  readonly subject: string;
  readonly value: number;
  readonly unit: Unit;
  readonly estimated: boolean;
}

/** `subject` names all it is about: `leaf-1 to 8`. */
export type OpenFinding = Pick<Finding, 'code' | 'severity' | 'subject'> & { readonly says: string };

export function builtRow(variant: Variant, build: Build, picture: boolean): VariantRow {
  const { report, solids, drawings, withheld } = build;
  return {
    ...verdict(variant, report.findings, report.units),
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

export const unbuiltRow = (
  variant: Variant,
  findings: readonly Finding[],
  units: UnitSystem,
): VariantRow => ({
  ...verdict(variant, findings, units),
  built: false,
  solids: 0,
  drawings: 0,
  withheld: 0,
  figures: [],
  picture: false,
});

function verdict({ name, settings }: Variant, findings: readonly Finding[], units: UnitSystem) {
  const of = (wanted: Severity) => findings.filter(({ severity }) => severity === wanted);
  const grave = causesByCode(findings.filter(({ severity }) => severity !== 'note')).flat();
  const open = grave.map((cause): OpenFinding => {
    const { code, severity } = cause.worst;
    const { subjects, where, says } = sayCause(cause, units);
    return {
      code,
      severity,
      subject: subjects,
      says: cause.findings.length > 1 ? `${where}: ${says}` : says,
    };
  });
  return {
    name,
    settings,
    units,
    stops: of('stop').length,
    warnings: of('warn').length,
    notes: of('note').length,
    open,
  };
}

/** In the order a summary gives it. */
export const rowJson = (row: VariantRow): Json => ({
  name: row.name,
  settings: row.settings.map(({ path, value }) => ({ path, value })),
  units: row.units,
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
