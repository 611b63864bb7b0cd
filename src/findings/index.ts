export { catalogue, type FindingCode } from './catalogue.ts';
export * from './finding.ts';
export * from './report.ts';
