import type { FigureName, Report, UnitSystem } from '../../findings/index.ts';
import { sizeText } from '../../lettering/index.ts';
import { type Boss, type Mold, type Placement, type Station, tipsOf } from '../../mold/index.ts';
import { fixed, runs, showFigure, showQuantity } from '../../wording/index.ts';
import { both, degrees, stacked } from './names.ts';
import type { Column, Paper } from './paper.ts';
import { leastCover } from './side-view.ts';

/** The figure of that name about a subject, as people read it; a dash where the report has none. */
export function figureText(report: Report, name: FigureName, subject?: string): string {
  const found = report.figures.find(
    (figure) => figure.name === name && (subject === undefined || figure.subject === subject),
  );
  return found ? showFigure(found, report.units) : '-';
}

/** How a master lies: its tipping about x and y of its own file; what turns it flat on the disc is its turn. */
function lieText(placement: Placement): string {
  const tips = tipsOf(placement).map(({ axis, degrees: by }) => `${axis} ${fixed(by, 1)}°`);
  return tips.length === 0 ? 'as in its file' : `tipped ${tips.join(', ')}`;
}

/** How many of each master, what one weighs and how it lies. */
export function masterTable(paper: Paper, mold: Mold, report: Report, title: string): void {
  paper.section('Masters', title);
  const columns: Column[] = [
    { title: 'master', share: 0.2 },
    { title: 'count', share: 0.07, align: 'right' },
    { title: 'of', share: 0.13 },
    { title: 'lie', share: 0.18 },
    { title: 'volume', share: 0.23, align: 'right' },
    { title: 'one casting', share: 0.19, align: 'right' },
  ];
  const rows = mold.masters.map(({ id, material, measures, estimated }) => {
    const placed = mold.placements.filter(({ master }) => master === id);
    const lies = [...new Set(placed.map(lieText))];
    return [
      id,
      String(placed.length),
      material ?? '-',
      lies.join('; '),
      `${estimated ? '~' : ''}${showQuantity(measures.volume, 'mm3', mold.units)}`,
      placed.length > 0 ? figureText(report, 'shot.casting', placed[0].id) : '-',
    ];
  });
  paper.table(columns, rows, title);
}

/** Each placement: where, how turned, how deep, what cover it leaves. */
export function placementTable(paper: Paper, mold: Mold, report: Report, title: string): void {
  if (mold.placements.length === 0) return;
  const { units } = mold;
  paper.section('Where they lie', title);
  const columns: Column[] = [
    { title: 'placement', share: 0.2 },
    { title: 'radius', share: 0.13, align: 'right' },
    { title: 'angle', share: 0.09, align: 'right' },
    { title: 'turn', share: 0.09, align: 'right' },
    { title: 'sink', share: 0.13, align: 'right' },
    { title: 'stands up', share: 0.13, align: 'right' },
    { title: 'least cover', share: 0.13, align: 'right' },
    { title: 'build-up', share: 0.1, align: 'right' },
  ];
  const rows = mold.placements.map((one) => {
    const angleRad = Math.atan2(one.y, one.x);
    const cover = leastCover(report, one.id);
    const support = supportNumber(mold, one.id);
    return [
      `${one.estimated ? '~' : ''}${one.id}`,
      stacked(units, Math.hypot(one.x, one.y)),
      `${degrees(angleRad)}°`,
      `${degrees(one.turnRad)}°`,
      stacked(units, Math.max(0, -one.lowest)),
      stacked(units, Math.max(0, one.highest)),
      cover === undefined ? '-' : stacked(units, cover),
      support === undefined ? '-' : `no. ${support}`,
    ];
  });
  paper.table(columns, rows, title);
}

/** Number of a placement's build-up, counted as the solids are. */
const supportNumber = (mold: Mold, id: string): number | undefined => {
  const at = mold.supports.findIndex(({ placement }) => placement === id);
  return at < 0 ? undefined : at + 1;
};

/** Bosses by polar and by x/y coordinates. */
export function bossTable(paper: Paper, mold: Mold, title: string): void {
  if (mold.bosses.length === 0) return;
  const { units } = mold;
  paper.section('Registration bosses', title);
  const columns: Column[] = [
    { title: 'boss', share: 0.14 },
    { title: 'kind', share: 0.28 },
    { title: 'radius', share: 0.16, align: 'right' },
    { title: 'angle', share: 0.1, align: 'right' },
    { title: 'x', share: 0.16, align: 'right' },
    { title: 'y', share: 0.16, align: 'right' },
  ];
  const rows = mold.bosses.map((boss) => [
    boss.id,
    sayBoss(boss, units),
    stacked(units, Math.hypot(boss.x, boss.y)),
    `${degrees(Math.atan2(boss.y, boss.x))}°`,
    stacked(units, boss.x),
    stacked(units, boss.y),
  ]);
  paper.table(columns, rows, title);
}

/** By its thread, else by its width at the parting plane. */
function sayBoss({ kind, size, acrossFlats, headRadius }: Boss, units: UnitSystem): string {
  if (kind === 'cap nut') return `${kind} ${size}`;
  if (kind !== 'hexagon') return `${kind}\n${both(units, 2 * headRadius)}`;
  const name = size === sizeText(acrossFlats, units) ? kind : `${kind} ${size}`;
  return `${name}, across flats\n${both(units, acrossFlats)}`;
}

/** Tabs, notches, runners, gates and vents. */
export function rimTable(paper: Paper, mold: Mold, title: string): void {
  const { units } = mold;
  const rows = [
    ...mold.tabs.map(({ id, angleRad, width, length, height, inset }) => [
      id,
      'separating tab',
      `${degrees(angleRad)}°`,
      `${both(units, width)} wide, ${both(units, length)} long, ${both(units, height)} high, ${both(units, inset)} within the rim`,
    ]),
    ...mold.notches.map(({ id, angleRad, width, depth }) => [
      id,
      'witness notch',
      `${degrees(angleRad)}°`,
      `${both(units, width)} wide, ${both(units, depth)} deep, across both halves`,
    ]),
    ...channelGroups(mold),
  ];
  if (rows.length === 0) return;
  paper.section('Tab, notch, gates and vents', title);
  const columns: Column[] = [
    { title: 'name', share: 0.22 },
    { title: 'what', share: 0.18 },
    { title: 'angle', share: 0.1, align: 'right' },
    { title: 'size', share: 0.5 },
  ];
  paper.table(columns, rows, title);
}

/** Channels of one kind, half and size in one row. */
function channelGroups({ channels, units }: Mold): string[][] {
  const groups = new Map<string, string[]>();
  for (const { id, kind, placement, run, half } of channels) {
    const said = (of: (station: Station) => number): string => {
      const [begin, end] = [of(run[0]), of(run[run.length - 1])].map((size) => both(units, size));
      return begin === end ? begin : `${begin} to ${end}`;
    };
    const size = `${said(({ width }) => width)} wide, ${said(({ depth }) => depth)} deep`;
    const key = JSON.stringify([`${kind === 'pocket' ? 'slowing pocket' : kind}, ${half} half`, size]);
    groups.set(key, [...(groups.get(key) ?? []), kind === 'runner' ? id : placement]);
  }
  return [...groups].map(([key, placements]) => {
    const [what, size] = JSON.parse(key) as [string, string];
    return [`${placements.length} of them`, what, '', `${size}: ${runs(placements)}`];
  });
}
