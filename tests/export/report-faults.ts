import { Ajv2020 } from 'ajv/dist/2020.js';
import { reportJson } from '../../src/export/index.ts';
import { reportJsonSchema } from '../../src/export/report-schema.ts';
import { figureCatalogue, type Report } from '../../src/findings/index.ts';

// Held to a JSON Schema validator that knows nothing of this program.
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(reportJsonSchema());

export const asJson = (report: Report): unknown => JSON.parse(new TextDecoder().decode(reportJson(report)));

/** What is wrong with a report by its schema. */
export function faultsIn(json: unknown): string[] {
  validate(json);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** Figures in another unit than the catalogue says. */
export const strangeUnits = ({ figures }: Report): string[] =>
  figures
    .filter(({ name, unit }) => unit !== figureCatalogue[name].unit)
    .map(({ name, unit }) => `${name} ${unit}`);
