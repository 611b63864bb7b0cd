import type { Figure, Report, UnitSystem } from '../../findings/index.ts';
import type { Mold, Placement } from '../../mold/index.ts';
import { bossSpace, soundSprue, sprueFormOutline } from '../../mold/index.ts';
import { fixed } from '../../wording/index.ts';
import { bare, both, inOrder } from './names.ts';
import { type Paper, shade } from './paper.ts';

const title = 'Side view and heights';

/** The mold from the side, to one scale both ways: both halves, sprue form, bosses and how far each charm reaches. */
export function sideView(paper: Paper, mold: Mold): void {
  const { disc, sprue } = mold;
  const scale = Math.min(1, (paper.width - 40) / (2 * disc.radius));
  const grip = sprue?.grip ?? 0;
  const height = (disc.lower + disc.upper + grip) * scale;
  paper.section('Side view', title, height + 24);
  paper.write(`to scale, 1:${fixed(1 / scale, 2)}`, paper.right, paper.y - 5, { size: 2.6 }, 'right');
  const middle = paper.left + paper.width / 2;
  const plane = paper.y + (disc.upper + grip) * scale + 2;
  const place = (x: number, z: number): [number, number] => [middle + x * scale, plane - z * scale];
  box(paper, place(-disc.radius, disc.upper), place(disc.radius, 0), 0.3);
  box(paper, place(-disc.radius, 0), place(disc.radius, -disc.lower), 0.3);
  for (const { x, reach, lowest, highest } of mold.placements)
    box(paper, place(x - reach, highest), place(x + reach, lowest), 0.12, 0.45);
  for (const boss of mold.bosses) {
    const { depth, height: tall, reach } = bossSpace(boss, mold.process);
    box(paper, place(boss.x - reach, tall), place(boss.x + reach, -depth), 0.25);
  }
  const form = soundSprue(mold);
  if (form) {
    const outline = sprueFormOutline(form, disc.upper);
    const mirrored = [...outline, ...[...outline].reverse().map(([r, z]) => [-r, z] as const)];
    mirrored.forEach(([r, z], i) => {
      const [px, py] = place(r, z);
      if (i === 0) paper.pen.moveTo(px, py);
      else paper.pen.lineTo(px, py);
    });
    paper.pen.closePath().lineWidth(0.3).strokeColor(shade(0)).stroke();
  }
  const edge = place(disc.radius, 0)[0] + 1.5;
  const thickness = (name: string, mm: number, y: number): void => {
    const [first, second] = inOrder(mold.units, mm);
    paper.write(`${name} ${first}`, edge, y - 2.7, { size: 2.2 });
    paper.write(second, edge, y + 0.3, { size: 2.2 });
  };
  thickness('upper', disc.upper, plane - (disc.upper / 2) * scale);
  thickness('lower', disc.lower, plane + (disc.lower / 2) * scale);
  paper.y = plane + disc.lower * scale + 7;
}

/** Each charm's reach below and above the parting plane as a bar within the halves, in the order of the plan. */
export function heightBars(paper: Paper, mold: Mold, report: Report): void {
  const { placements, disc, limits, units } = mold;
  if (placements.length === 0) return;
  const scale = Math.min(2, 55 / (disc.lower + disc.upper));
  const whole = (disc.lower + disc.upper) * scale;
  const perRow = Math.max(6, Math.floor((paper.width - 24) / 9));
  for (let from = 0; from < placements.length; from += perRow) {
    const row = placements.slice(from, from + perRow);
    const more = from > 0 ? ', continued' : '';
    paper.section(`Heights against thickness, ${fixed(scale, 2)}:1${more}`, title, whole + 34);
    const plane = paper.y + disc.upper * scale;
    const [left, right] = [paper.left + 14, paper.left + 14 + row.length * 9];
    const level = (z: number, name: string, width: number, gray: number): void => {
      paper.rule(left, plane - z * scale, right, plane - z * scale, width, gray);
      paper.write(name, left - 1, plane - z * scale - 1, { size: 1.9 }, 'right');
    };
    level(disc.upper, `+${bare(units, disc.upper)}`, 0.3, 0);
    level(0, '0', 0.3, 0);
    level(-disc.lower, `-${bare(units, disc.lower)}`, 0.3, 0);
    paper.pen.save().dash(1.2, { space: 0.8 });
    level(disc.upper - limits.cover, `+${bare(units, disc.upper - limits.cover)}`, 0.15, 0.3);
    level(limits.cover - disc.lower, `-${bare(units, disc.lower - limits.cover)}`, 0.15, 0.3);
    paper.pen.restore();
    row.forEach((placement, i) => {
      const cover = leastCover(report, placement.id);
      bar(paper, placement, units, left + i * 9, plane, scale, disc.lower * scale, cover);
    });
    paper.y = plane + disc.lower * scale + 22;
  }
  paper.paragraph(
    `Bars: reach above and below the parting plane in ${units === 'metric' ? 'mm' : 'inches'}. Dashed: where the least cover of ${both(units, limits.cover)} begins. Under each bar: its name and, in brackets, the least cover left.`,
    title,
    { size: 2.5 },
  );
}

function bar(
  paper: Paper,
  { id, lowest, highest }: Placement,
  units: UnitSystem,
  x: number,
  plane: number,
  scale: number,
  under: number,
  cover: number | undefined,
): void {
  const { pen } = paper;
  const top = plane - highest * scale;
  pen
    .rect(x + 2, top, 5, (highest - lowest) * scale)
    .lineWidth(0.2)
    .fillAndStroke(shade(0.85), shade(0));
  paper.write(bare(units, highest), x + 2, top - 2.6, { size: 1.9 });
  paper.write(bare(units, -lowest), x + 2, plane - lowest * scale + 0.5, { size: 1.9 });
  const left = cover === undefined ? '' : ` (${bare(units, cover)})`;
  const name = `${paper.fitted(id, 15, { size: 2.1 })}${left}`;
  pen.save().rotate(60, { origin: [x + 4.5, plane + under + 2] });
  paper.write(name, x + 4.5, plane + under + 1, { size: 2.1 });
  pen.restore();
}

/** The least cover over and under a placement. */
export const leastCover = (report: Report, id: string): number | undefined => {
  const covers = report.figures.filter(
    ({ name, subject }: Figure) => subject === id && (name === 'cover.lower' || name === 'cover.upper'),
  );
  return covers.length === 0 ? undefined : Math.min(...covers.map(({ value }) => value));
};

function box(
  paper: Paper,
  [x1, y1]: [number, number],
  [x2, y2]: [number, number],
  width: number,
  gray = 0,
): void {
  paper.pen
    .rect(x1, y1, x2 - x1, y2 - y1)
    .lineWidth(width)
    .strokeColor(shade(gray))
    .stroke();
}
