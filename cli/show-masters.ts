import type { Report } from '../src/findings/index.ts';
import { lieOf, type Mold, sizeAsItLies } from '../src/mold/index.ts';
import type { Plan } from '../src/plan/index.ts';
import { showQuantity, showSides } from '../src/wording/index.ts';
import { shorten, strong, table } from './terminal.ts';

/** Widest name of a master beside the other columns. */
const nameWidth = 20;

/** Each master's final size (that of the casting, before shrink is added), volume and the mass of one casting. */
export function showMasters(plan: Plan, mold: Mold, report: Report): string {
  const { units } = report;
  const rows = mold.masters.map(({ id, mesh, measures, estimated }) => {
    const spec = plan.masters?.[id];
    if (!spec) throw new Error(`the mold has a master ${id} that its plan has not`);
    const { length, width, height } = sizeAsItLies(mesh.positions, lieOf(spec));
    const placed = mold.placements.find(({ master }) => master === id);
    const mass = report.figures.find(
      ({ name, subject }) => name === 'shot.casting' && subject === placed?.id,
    );
    return [
      `  ${shorten(id, nameWidth)}`,
      `${estimated ? '~' : ''}${showSides([length, width, height], units)}`,
      `${estimated ? '~' : ''}${showQuantity(measures.volume, 'mm3', units)}`,
      mass ? `${mass.estimated ? '~' : ''}${showQuantity(mass.value, 'g', units)}` : '',
    ];
  });
  if (rows.length === 0) return '';
  const mass = rows.some((row) => row[3] !== '') ? 'one casting' : '';
  const head = ['Masters', 'length x width x height', 'volume', mass];
  const [first, ...others] = table([head, ...rows], [2, 3]).split('\n');
  return [strong(first), ...others].join('\n');
}
