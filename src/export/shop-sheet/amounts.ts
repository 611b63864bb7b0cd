import { type FigureName, figureCatalogue, type Report } from '../../findings/index.ts';
import type { Mold } from '../../mold/index.ts';
import { figureText } from './lists.ts';
import type { Paper } from './paper.ts';

/** Groups of figures of the whole mold that the bench works by. */
const groups: readonly { readonly title: string; readonly names: readonly FigureName[] }[] = [
  {
    title: 'Metal to melt',
    names: [
      'shot.poured',
      'shot.least',
      'shot.most',
      'pressure.opening',
      'speed.least',
      'speed.most',
      'spin.rimSpeed',
    ],
  },
  {
    title: 'Closing the can',
    names: [
      'closing.force',
      'closing.clamps',
      'closing.held',
      'closing.bolts',
      'closing.boltProof',
      'closing.boltShare',
      'closing.lid',
      'closing.lidStress',
      'closing.lidBow',
    ],
  },
  { title: 'Rubber in the can', names: ['pack.can', 'pack.laidIn', 'pack.cold', 'pack.excess'] },
  { title: 'Cure', names: ['cure.middle', 'cure.face', 'cure.gathered', 'cure.share', 'cure.needed'] },
  {
    title: 'Balance',
    names: ['balance.static', 'balance.angle', 'balance.permissible', 'balance.misrun', 'balance.correction'],
  },
  {
    title: 'Registration',
    names: [
      'registration.falseSeat',
      'registration.falseSeatAngle',
      'registration.shift',
      'registration.turn',
    ],
  },
];

/** The figures of the whole mold, those the report has. */
export function amounts(paper: Paper, { closing }: Mold['bench'], report: Report, title: string): void {
  const columns = [
    { title: 'figure', share: 0.6 },
    { title: 'value', share: 0.4, align: 'right' as const },
  ];
  for (const group of groups) {
    const rows = group.names.flatMap((name) => {
      const value = figureText(report, name);
      return value === '-' ? [] : [[figureCatalogue[name].means, value]];
    });
    if (rows.length === 0) continue;
    paper.section(group.title, title);
    paper.table(columns, rows, title);
    if (group.title === 'Closing the can' && closing?.bolts)
      paper.paragraph(
        'Tightening torque: from the makers of the bolts and of the can. Bolts draw the can shut; clamps or a press carry the load.',
        title,
        { size: 2.6 },
      );
  }
}

/** Rubber out under each master, and in at each build-up, cm3. */
export function ledger(paper: Paper, mold: Mold, report: Report, title: string): void {
  const alike = new Map<string, string[]>();
  for (const { id } of mold.placements) {
    const [out, into] = (['ledger.displaced', 'ledger.buildUp'] as const).map((name) =>
      figureText(report, name, id),
    );
    if (out === '-' && into === '-') continue;
    const key = `${out}\n${into}`;
    alike.set(key, [...(alike.get(key) ?? []), id]);
  }
  if (alike.size === 0) return;
  paper.section('Rubber ledger', title);
  paper.table(
    [
      { title: 'placement', share: 0.46 },
      { title: 'out, for each master', share: 0.27, align: 'right' },
      { title: 'in, at each build-up', share: 0.27, align: 'right' },
    ],
    [...alike].map(([key, ids]) => [ids.join(', '), ...key.split('\n')]),
    title,
  );
}
