import type { Field, Figure, Finding, Report, Series } from '../findings/index.ts';
import { type Json, jsonBytes } from './json-text.ts';

/**
 * The report as JSON bytes: everything in it, in the report's own order and with keys in a fixed order. Only the
 * fields (a number for each of up to millions of vertices) are summarized: count, least, greatest, mean.
 */
export const reportJson = (report: Report): Uint8Array =>
  jsonBytes({
    schema: report.schema,
    title: report.title,
    findings: report.findings.map(findingJson),
    figures: report.figures.map(figureJson),
    series: report.series.map(seriesJson),
    fields: report.fields.map(fieldJson),
  });

const findingJson = (f: Finding): Json => ({
  code: f.code,
  severity: f.severity,
  subject: f.subject,
  place: f.place,
  measured: f.measured && { value: f.measured.value, unit: f.measured.unit },
  limit: f.limit && { value: f.limit.value, unit: f.limit.unit },
  says: f.says,
  remedy: f.remedy,
  at: f.at && { file: f.at.file, line: f.at.line, column: f.at.column },
  changed: f.changed && { from: f.changed.from, reason: f.changed.reason },
});

const figureJson = (f: Figure): Json => ({
  name: f.name,
  subject: f.subject,
  value: f.value,
  unit: f.unit,
  source: f.source,
  estimated: f.estimated,
  places: f.places,
});

const seriesJson = ({ name, subject, x, y, limit }: Series): Json => ({
  name,
  subject,
  x: { label: x.label, unit: x.unit, values: x.values },
  y: { label: y.label, unit: y.unit, values: y.values },
  limit: limit && { value: limit.value, says: limit.says },
});

function fieldJson({ name, subject, unit, values }: Field): Json {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (const value of values) {
    if (value < least) least = value;
    if (value > greatest) greatest = value;
    sum += value;
  }
  const summary = values.length > 0 ? { least, greatest, mean: sum / values.length } : {};
  return { name, subject, unit, count: values.length, ...summary };
}
