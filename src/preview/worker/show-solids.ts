import type { Kernel } from '../../kernel/index.ts';
import type { Solid } from '../../mold/index.ts';
import type { ShownSolid } from './messages.ts';
import { shownMesh } from './reduce.ts';
import { send } from './send.ts';

/** Triangles of one half in the picture, and of all other solids together. */
const halfTriangles = 45_000;
const otherTriangles = 40_000;

/** Sends solids to the page, reduced where together they would be more than can be drawn smoothly. */
export function showSolids(edit: number, solids: readonly Solid[], kernel: Kernel, complete: boolean): void {
  const most = Math.max(2000, otherTriangles / Math.max(1, solids.length));
  const list = solids.map(({ id, title, role, subjects, toMold, mesh }): ShownSolid => {
    const budget = role === 'half' ? halfTriangles : most;
    return { id, title, role, subjects, toMold, mesh: shownMesh(mesh, budget, kernel) };
  });
  send(
    { kind: 'solids', edit, solids: list, complete },
    list.map(({ mesh }) => mesh),
  );
}
