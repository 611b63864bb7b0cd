import type { Mold } from '../../mold/index.ts';
import { both, degrees } from './names.ts';
import type { Column, Paper } from './paper.ts';

/** Where vent pins are drilled, how wide and how deep from the outer face. */
export function drillingTable(paper: Paper, { ventPins, units }: Mold, title: string): void {
  if (ventPins.length === 0) return;
  paper.section('Vent pins to drill, square to the parting face', title);
  const columns: Column[] = [
    { title: 'pin', share: 0.1 },
    { title: 'half', share: 0.1 },
    { title: 'diameter', share: 0.16, align: 'right' },
    { title: 'x', share: 0.16, align: 'right' },
    { title: 'y', share: 0.16, align: 'right' },
    { title: 'radius', share: 0.15, align: 'right' },
    { title: 'angle', share: 0.06, align: 'right' },
    { title: 'through', share: 0.11, align: 'right' },
  ];
  const rows = ventPins.map(({ id, half, diameter, x, y, depth }) => [
    id,
    half,
    both(units, diameter),
    both(units, x),
    both(units, y),
    both(units, Math.hypot(x, y)),
    `${degrees(Math.atan2(y, x))}°`,
    both(units, depth),
  ]);
  paper.table(columns, rows, title);
}
