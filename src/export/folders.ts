import { kindOfRole } from '../kinds/index.ts';
import type { Drawing, Mold, Solid } from '../mold/index.ts';
import { heatRow } from '../tables/index.ts';
import { materialOf } from './material-of.ts';

/** Folders of a build, by what is done first with the files in them. */
export type Folder = 'print' | 'machine' | 'cut' | 'paper' | 'look';

/** Where a solid's file lies: what is made of metal is machined, unless the plan says how the fixtures are made. */
export function folderOf(solid: Pick<Solid, 'role' | 'subjects'>, mold: Mold): Folder {
  const { firstUse } = kindOfRole(solid.role);
  if (firstUse === 'make where rigid') return mold.process === 'rigid' ? makerOf(solid, mold) : 'look';
  return firstUse === 'make' ? makerOf(solid, mold) : firstUse;
}

function makerOf(solid: Pick<Solid, 'role' | 'subjects'>, mold: Mold): 'print' | 'machine' {
  const material = materialOf(solid, mold);
  return material === mold.fixture.material ? fixtureMaker(mold) : makerOfMaterial(material);
}

/** What the fixtures are made on. */
export const fixtureMaker = ({ fixture: { material, making } }: Mold): 'print' | 'machine' => {
  if (!making) return makerOfMaterial(material);
  return making.process === 'machined' ? 'machine' : 'print';
};

const makerOfMaterial = (material: string): 'print' | 'machine' =>
  heatRow(material)?.kind === 'metal' ? 'machine' : 'print';

/** A template of paper is printed on it and cut by hand; all else is cut from sheet. */
export const folderOfDrawing = ({ material }: Pick<Drawing, 'material'>): Folder =>
  material === 'paper' ? 'paper' : 'cut';

/** Path of a solid's STL in the build's folder. */
export const solidPath = (solid: Solid, mold: Mold): string => `${folderOf(solid, mold)}/${solid.id}.stl`;

/** Path of a drawing in the build's folder. */
export const drawingPath = (drawing: Drawing, ending: 'svg' | 'dxf'): string =>
  `${folderOfDrawing(drawing)}/${drawing.id}.${ending}`;

export const overviewPath = 'look/overview.png';
