import { type FigureName, figureCatalogue } from './figures.ts';
import type { Finding } from './finding.ts';
import type { Unit, UnitSystem } from './value.ts';

/** A computed quantity. `name` is one of the catalogue's (`cover.least`); `source` names the published formula or table it rests on. */
export interface Figure {
  readonly name: FigureName;
  readonly subject: string;
  readonly value: number;
  readonly unit: Unit;
  readonly source: string;
  /** True when a stand-in or a value from memory went into it. */
  readonly estimated: boolean;
  /** What money is counted in, in the plan's own word. */
  readonly word?: string;
  /** Of the lowest or highest of several figures, which of them it is. */
  readonly by?: FigureName;
  /** Where it was found (mold frame, mm), if it has a place. */
  readonly places?: readonly (readonly [number, number, number])[];
}

/** Makes a figure of a known name; the unit comes from the catalogue. */
export const makeFigure = (name: FigureName, details: Omit<Figure, 'name' | 'unit'>): Figure => ({
  name,
  unit: figureCatalogue[name].unit,
  ...details,
});

/** Numbers to plot: `y` against `x`, same length. */
export interface Series {
  readonly name: string;
  readonly subject: string;
  readonly x: { readonly label: string; readonly unit: Unit; readonly values: readonly number[] };
  readonly y: { readonly label: string; readonly unit: Unit; readonly values: readonly number[] };
  /** What y is held to, in its unit, and what that means. */
  readonly limit?: { readonly value: number; readonly says: string };
}

/**
 * A number per vertex of the subject's placed mesh, to be shown as color: in the order of the vertices of its master's
 * mesh. `walls.thickness` (mm) is the distance of each vertex of a cavity from the nearest other thing.
 */
export interface Field {
  readonly name: string;
  readonly subject: string;
  readonly unit: Unit;
  readonly values: Float32Array;
}

/** What the checks found; the terminal, report.json, shop sheet and previewer show whatever is in it. */
export interface Report {
  readonly schema: 2;
  readonly title: string;
  /** The system the plan is written in. */
  readonly units: UnitSystem;
  readonly findings: readonly Finding[];
  readonly figures: readonly Figure[];
  readonly series: readonly Series[];
  readonly fields: readonly Field[];
}

/** What one check (or another stage) adds to the report. */
export type ReportPart = Partial<Pick<Report, 'findings' | 'figures' | 'series' | 'fields'>>;

/** What one question of a check found and measured. */
export type Judged = Required<Pick<Report, 'findings' | 'figures'>>;

export const joinReport = (title: string, units: UnitSystem, parts: readonly ReportPart[]): Report => ({
  schema: 2,
  title,
  units,
  findings: parts.flatMap((part) => part.findings ?? []),
  figures: parts.flatMap((part) => part.figures ?? []),
  series: parts.flatMap((part) => part.series ?? []),
  fields: parts.flatMap((part) => part.fields ?? []),
});
