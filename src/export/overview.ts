import { type Matrix4, movePoint, type Vec3 } from '../geometry/index.ts';
import { kindOfRole } from '../kinds/index.ts';
import type { Solid } from '../mold/index.ts';
import type { Build } from './build.ts';
import { overviewPath } from './folders.ts';
import { renderPicture } from './picture.ts';
import { roleColor } from './role-color.ts';
import type { ExportFile } from './solid-file.ts';

const size = { width: 480, height: 360 };

/**
 * A small picture of what was built, as it stands in the mold, seen from above at a slant: the open mold where there is
 * one. What would hide the rest, the upper half, is left out unless there is nothing else. No file where nothing was
 * built.
 */
export function overviewFiles({ solids }: Build): ExportFile[] {
  const all = solids.map(({ solid }) => solid).filter(({ role }) => kindOfRole(role).printable);
  const open = all.filter((solid) => !isUpperBlank(solid));
  const mold = open.some(({ role }) => kindOfRole(role).inOpenMold === 'face')
    ? open.filter(({ role }) => kindOfRole(role).inOpenMold !== 'no')
    : open;
  const shown = mold.length > 0 ? mold : all;
  if (shown.length === 0) return [];
  const items = shown.map(({ mesh, role, toMold }) => ({ mesh, color: roleColor(role), matrix: toMold }));
  const view = { direction: [0.22, 0.62, -0.76] as const, up: [0, 0, 1] as const };
  const bytes = renderPicture({ items, view, ...size, background: [0.97, 0.96, 0.94] });
  return [{ path: overviewPath, bytes }];
}

/** A half or blank that lies above the parting plane. */
const isUpperBlank = ({ role, mesh, toMold }: Solid): boolean =>
  kindOfRole(role).madeOf === 'half' && middleOf(mesh.positions, toMold)[2] > 0;

function middleOf(positions: Float32Array, toMold: Matrix4): Vec3 {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = low.map((value) => -value);
  for (let i = 0; i < positions.length; i++) {
    low[i % 3] = Math.min(low[i % 3], positions[i]);
    high[i % 3] = Math.max(high[i % 3], positions[i]);
  }
  return movePoint(toMold, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2]);
}
