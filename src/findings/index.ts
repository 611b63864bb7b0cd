export { catalogue, type FindingCode } from './catalogue.ts';
export type { CodeEntry } from './codes/entry.ts';
export { counted } from './counted.ts';
export { type FigureEntry, type FigureName, figureCatalogue, figureHeadings, headingOf } from './figures.ts';
export * from './finding.ts';
export * from './report.ts';
export { fixed, showQuantity } from './show-quantity.ts';
