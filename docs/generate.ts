/**
 * Writes what is generated from the code: the JSON Schema of a plan for editors, and the table of findings.
 * With `--check` it writes nothing and exits 1 where a file on disk is not what the code gives.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CodeEntry, catalogue } from '../src/findings/index.ts';
import { planJsonSchema } from '../src/plan/index.ts';

const root = new URL('../', import.meta.url);

const generated: readonly { readonly path: string; content(): string }[] = [
  { path: 'plan.schema.json', content: () => `${JSON.stringify(planJsonSchema(), null, 2)}\n` },
  { path: 'docs/findings.md', content: findingsTable },
];

function findingsTable(): string {
  const cell = (text: string): string => text.replaceAll('|', '\\|');
  const rows = Object.entries(catalogue)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([code, { severity, safety, means, remedy, formula, source }]: [string, CodeEntry]) => {
      const shown = safety ? `${severity}, cannot be lowered` : severity;
      const judged = [formula, source].filter((text) => text !== undefined).join('; ');
      return `| \`${code}\` | ${shown} | ${cell(means)} | ${cell(judged)} | ${cell(remedy)} |`;
    });
  return `# Findings

Every code the program can report. Generated from \`src/findings/codes/\` by \`npm run generate\`; do not edit.

\`stop\`: must not be used as it is. \`warn\`: likely to spoil a casting. \`note\`: worth knowing.

| code | severity | what it means | formula; source | what to do |
| --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}

async function onDisk(url: URL): Promise<string | undefined> {
  try {
    // A checkout on Windows may have turned the line ends.
    return (await readFile(url, 'utf8')).replaceAll('\r\n', '\n');
  } catch {
    return undefined;
  }
}

const check = process.argv.includes('--check');
for (const { path, content } of generated) {
  const url = new URL(path, root);
  const wanted = content();
  if ((await onDisk(url)) === wanted) continue;
  if (check) {
    console.error(`${path} is not what the code gives: run \`npm run generate\` and commit it.`);
    process.exitCode = 1;
  } else {
    await writeFile(url, wanted);
    console.log(`wrote ${relative(process.cwd(), fileURLToPath(url))}`);
  }
}
