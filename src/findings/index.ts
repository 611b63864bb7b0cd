export { catalogue, entryOf, type FindingCode } from './catalogue.ts';
export { type Cause, causesByCode } from './cause.ts';
export type { CodeEntry, Template } from './codes/entry.ts';
export { type FigureEntry, type FigureName, figureCatalogue, figureHeadings, headingOf } from './figures.ts';
export * from './finding.ts';
export * from './report.ts';
export { isMilder, type Severity, severities } from './severity.ts';
export {
  type FindingValue,
  kindOf,
  type Measured,
  type Unit,
  type UnitSystem,
  units,
  type ValueKind,
} from './value.ts';
