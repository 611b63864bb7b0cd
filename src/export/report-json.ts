import {
  entryOf,
  type Field,
  type Figure,
  type Finding,
  type FindingValue,
  kindOf,
  type Report,
  type Series,
  type UnitSystem,
  type ValueKind,
} from '../findings/index.ts';
import { sayFinding } from '../wording/index.ts';
import { type Json, jsonBytes } from './json-text.ts';
import type { MasterSize } from './master-sizes.ts';

/**
 * The report as JSON bytes: everything in it, in the report's own order and with keys in a fixed order. Only the
 * fields (a number for each of up to millions of vertices) are summarized: count, least, greatest, mean. The masters'
 * final sizes stand in it where they are asked for.
 */
export const reportJson = (report: Report, masters?: readonly MasterSize[]): Uint8Array =>
  jsonBytes({
    schema: report.schema,
    title: report.title,
    units: report.units,
    findings: report.findings.map((one) => findingJson(one, report.units)),
    figures: report.figures.map(figureJson),
    series: report.series.map(seriesJson),
    fields: report.fields.map(fieldJson),
    masters: masters?.map(masterJson),
  });

const findingJson = (f: Finding, units: UnitSystem): Json => ({
  code: f.code,
  severity: f.severity,
  subject: f.subject,
  place: f.place,
  values: Object.fromEntries(
    Object.entries(f.values).map(([name, value]) => [
      name,
      valueJson(value, kindOf(entryOf(f.code).values ?? {}, name)?.kind),
    ]),
  ),
  ...sayFinding(f, units),
  at: f.at && { file: f.at.file, line: f.at.line, column: f.at.column },
  changed: f.changed && { from: f.changed.from, reason: f.changed.reason },
});

/** A number goes with its unit, so that no reader has to know the catalogue. */
function valueJson(value: FindingValue, kind: ValueKind | undefined): Json {
  if (typeof value === 'number') return typeof kind === 'string' ? { value, unit: kind } : value;
  if (typeof value === 'object' && 'unit' in value) return { value: value.value, unit: value.unit };
  return value;
}

const figureJson = (f: Figure): Json => ({
  name: f.name,
  subject: f.subject,
  value: f.value,
  unit: f.unit,
  source: f.source,
  estimated: f.estimated,
  by: f.by,
  places: f.places,
});

const seriesJson = ({ name, subject, x, y, limit }: Series): Json => ({
  name,
  subject,
  x: { label: x.label, unit: x.unit, values: x.values },
  y: { label: y.label, unit: y.unit, values: y.values },
  limit: limit && { value: limit.value, says: limit.says },
});

const masterJson = ({ id, length, width, height, volume, massG, estimated }: MasterSize): Json => ({
  id,
  length,
  width,
  height,
  volume,
  massG: massG && { value: massG.value, estimated: massG.estimated },
  estimated,
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
