import type { UnitSystem } from '../../findings/index.ts';
import { toDegrees } from '../../geometry/index.ts';
import { type Channel, isDrawn, type Mold, runLength, type Section } from '../../mold/index.ts';
import { fixed } from '../../wording/index.ts';
import { both } from './names.ts';
import type { Column, Paper } from './paper.ts';

/** Runners, gates and their slowing pockets, then vents; in each the lower half first and the deepest first; what is alike stays in the plan's order. */
function cuttingOrder(channels: readonly Channel[]): Channel[] {
  const rank = ({ kind, half }: Channel): number => 2 * turn[kind] + (half === 'lower' ? 0 : 1);
  const deepest = ({ run }: Channel): number => Math.max(...run.map(({ depth }) => depth));
  return channels.filter(isDrawn).sort((a, b) => rank(a) - rank(b) || deepest(b) - deepest(a));
}

/** What metal comes to first is cut first, so that what leads out of it has something to begin in. */
const turn: Readonly<Record<Channel['kind'], number>> = { runner: 0, gate: 1, pocket: 2, vent: 3 };

/** What is cut with the knife, one after another, with the depth of each. */
export function cuttingTable(paper: Paper, { process, channels, units }: Mold, title: string): void {
  const order = cuttingOrder(channels);
  if (process !== 'rubber' || order.length === 0) return;
  paper.section('Order of cutting', title);
  const columns: Column[] = [
    { title: '', share: 0.05, align: 'right' },
    { title: 'cut', share: 0.2 },
    { title: 'half', share: 0.16 },
    { title: 'shape', share: 0.14 },
    { title: 'depth', share: 0.17 },
    { title: 'width', share: 0.17 },
    { title: 'length', share: 0.11 },
  ];
  const rows = order.map((channel, i) => {
    const { id, half, section, run } = channel;
    return [
      String(i + 1),
      id,
      half === 'upper' ? 'UPPER, MIRRORED' : 'lower',
      shapeText(section),
      fromTo(
        run.map(({ depth }) => depth),
        units,
      ),
      fromTo(
        run.map(({ width }) => width),
        units,
      ),
      both(units, runLength(run)),
    ];
  });
  paper.table(columns, rows, title);
  if (order.some(({ half }) => half === 'upper'))
    paper.section('UPPER HALF: MIRRORED. CUT IT BY ITS OWN STENCIL, SEEN ON ITS PARTING FACE.', title);
}

const shapeText = (section: Section): string =>
  section.kind === 'trapezoid' ? `trapezoid, ${fixed(toDegrees(section.draftRad), 0)}°` : section.kind;

function fromTo(sizes: readonly number[], units: UnitSystem): string {
  const [begin, end] = [both(units, sizes[0]), both(units, sizes[sizes.length - 1])];
  return begin === end ? begin : `${begin} to ${end}`;
}
