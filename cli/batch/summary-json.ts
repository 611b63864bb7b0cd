import { jsonBytes } from '../../src/export/index.ts';
import { version } from '../version.ts';
import type { SummaryWriter } from './summary-writer.ts';
import { rowJson } from './variant-row.ts';

const decoder = new TextDecoder();

/** batch-summary.json: the rows as they are kept in the variants' folders. */
export const summaryJson: SummaryWriter = {
  file: 'batch-summary.json',
  head: (paths) => {
    const program = JSON.stringify({ name: 'discwright', version });
    return `{\n  "schema": 1,\n  "program": ${program},\n  "varied": ${JSON.stringify(paths)},\n  "variants": [`;
  },
  row: (row, _, isFirst) => {
    const text = decoder.decode(jsonBytes(rowJson(row))).trimEnd();
    return `${isFirst ? '' : ','}\n    ${text.replaceAll('\n', '\n    ')}`;
  },
  foot: () => '\n  ]\n}\n',
};
