import { shownCavity } from '../../fill/index.ts';
import { compose, rotation } from '../../geometry/index.ts';
import type { Mold, Placement } from '../../mold/index.ts';
import { type FillGrid, fillGrid } from './fill-grid.ts';
import type { ShownFilling } from './messages.ts';

type Step = (title: string, done: number, total: number) => Promise<void>;

/** The order in which every cavity with a gate fills, one after the other; like ones share what is found of the first. */
export async function showFilling(mold: Mold, step: Step): Promise<ShownFilling[]> {
  const found = new Map<string, FillGrid | undefined>();
  const shown: ShownFilling[] = [];
  for (const [done, placement] of mold.placements.entries()) {
    await step('Filling', done, mold.placements.length);
    const key = likeness(mold, placement);
    if (!found.has(key)) found.set(key, gridOf(mold, placement));
    const grid = found.get(key);
    if (grid) shown.push({ subject: placement.id, turnRad: turnOf(placement), grid });
  }
  return shown;
}

/** The angle its cells are turned by about the axis. */
export const turnOf = ({ x, y }: Placement): number => Math.atan2(y, x);

function gridOf(mold: Mold, placement: Placement): FillGrid | undefined {
  const cavity = shownCavity(mold, placement.id);
  const filling = cavity?.fill(mold.channels);
  return cavity && filling && fillGrid(cavity, filling.order, turnOf(placement));
}

/** What two cavities that fill alike have in common: how they lie and what opens into them, turned back to one direction. */
function likeness({ channels }: Mold, placement: Placement): string {
  const back = -turnOf(placement);
  const [c, s] = [Math.cos(back), Math.sin(back)];
  const fine = (value: number): number => Math.round(value * 1000) / 1000 + 0;
  const own = channels.filter((one) => one.placement === placement.id);
  return JSON.stringify([
    placement.master,
    compose(rotation('z', back), placement.matrix).map(fine),
    own.map(({ kind, half, run }) => [
      kind,
      half,
      run.map(({ at: [x, y], width, depth }) => [fine(c * x - s * y), fine(s * x + c * y), width, depth]),
    ]),
  ]);
}
