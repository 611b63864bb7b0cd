import type { Build } from '../build.ts';
import { whatToMake } from '../what-to-make/what-to-make.ts';
import type { Paper } from './paper.ts';

/** What to make, cut and take, on pages of its own; nothing where there is nothing of that. */
export function makePage(paper: Paper, build: Build): void {
  const title = 'What to make';
  const { listings, remarks } = whatToMake(build, 'both');
  if (listings.length === 0) return;
  paper.page(title);
  for (const listing of listings) {
    paper.section(listing.title, title);
    paper.table(listing.columns, listing.rows, title);
  }
  for (const remark of remarks) paper.paragraph(remark, title, { size: 2.7 });
  paper.paragraph('Weights are of a solid piece. ~: rests on an estimate or on a value from memory.', title, {
    size: 2.6,
  });
}
