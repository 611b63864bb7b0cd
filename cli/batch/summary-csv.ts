import { figureCatalogue } from '../../src/findings/index.ts';
import { columnNumber, columnUnit } from '../../src/wording/index.ts';
import { keyFigures, keyLabel } from './key-figures.ts';
import type { SummaryWriter } from './summary-writer.ts';
import { settingOf, stateOf } from './variant-row.ts';

/**
 * batch-summary.csv (RFC 4180, UTF-8): numbers rounded, in the unit of the person's system that
 * their column names, so that a spreadsheet can sort them. As they were computed they are in batch-summary.json.
 */
export const summaryCsv: SummaryWriter = {
  file: 'batch-summary.csv',
  head: (paths, _, units) =>
    line([
      'name',
      ...paths,
      'state',
      'stops',
      'warnings',
      'notes',
      'solids',
      'drawings',
      'withheld',
      ...keyFigures.map(
        (figure) => `${keyLabel(figure)} (${columnUnit(figureCatalogue[figure.name].unit, units)})`,
      ),
      'open findings',
    ]),
  row: (row, paths, _, units) =>
    line([
      row.name,
      ...paths.map((path) => settingOf(row, path)),
      stateOf(row),
      row.stops,
      row.warnings,
      row.notes,
      row.solids,
      row.drawings,
      row.withheld,
      ...keyFigures.map(({ name }) => {
        const found = row.figures.find((one) => one.name === name);
        return found ? columnNumber(found.value, found.unit, units) : '';
      }),
      row.open.map(({ severity, code, says }) => `${severity} ${code}: ${says}`).join(' | '),
    ]),
  foot: () => '',
};

const line = (cells: readonly (string | number)[]): string => `${cells.map(cell).join(',')}\r\n`;

/** A text that a spreadsheet would take for a formula gets an apostrophe before it. */
function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const inert = /^[=+\-@\t\r]/.test(value) && !isNumber(value) ? `'${value}` : value;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}

const isNumber = (text: string): boolean => /^[+-]?\d+(\.\d+)?$/.test(text);
