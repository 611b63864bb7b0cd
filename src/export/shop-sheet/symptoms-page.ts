import type { Report } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { type SymptomCause, symptomsOf } from '../../tables/index.ts';
import type { Paper } from './paper.ts';

/** What is seen on a casting, and what to change: of each, first what this mold is found to have, then by likelihood. */
export function symptomsPage(paper: Paper, { process }: Mold, { findings }: Report): void {
  const title = 'If a casting is not right';
  paper.page(title);
  paper.paragraph(
    'Likely causes in order: try the first, change one thing at a time, write it into the record. *: found in this plan, see the findings page. Common practice, no published source.',
    title,
    { size: 2.7 },
  );
  const found = new Set<string>(findings.map(({ code }) => code));
  const marked = ({ codes = [] }: SymptomCause): boolean => codes.some((code) => found.has(code));
  const rows = symptomsOf(process).flatMap(({ seen, causes }) =>
    [...causes.filter(marked), ...causes.filter((one) => !marked(one))].map((one, i) => [
      i === 0 ? seen : '',
      `${marked(one) ? '* ' : ''}${one.cause}`,
      one.change,
    ]),
  );
  const columns = [
    { title: 'seen', share: 0.27 },
    { title: 'likely', share: 0.37 },
    { title: 'change', share: 0.36 },
  ];
  paper.table(columns, rows, title);
}
