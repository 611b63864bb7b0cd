import type { Build } from './build.ts';
import { fixtureMaker, folderOf } from './folders.ts';
import type { CheckedSolid, ExportFile } from './solid-file.ts';
import { placeOnBeds, roomyBed } from './three-mf/beds.ts';
import { type ModelItem, modelText } from './three-mf/model.ts';
import { packModel } from './three-mf/package.ts';

/** Between two beds, mm. */
const aisle = 20;

/**
 * All solids to make of a build as one 3MF, mm, each standing on z = 0 as it is printed or machined, colored by
 * role, laid out on beds of the plan's size that stand side by side along x. What is only to look at stays out, so
 * that nobody prints it. No file where nothing is left. Solids must have passed the audit: the format wants each edge
 * shared by exactly two faces and a positive volume.
 */
export function threeMfFiles({ mold, solids, origin }: Build): ExportFile[] {
  const made = solids.filter(({ solid }) => folderOf(solid, mold) !== 'look');
  if (made.length === 0) return [];
  const items = layOut(made, mold.fixture.bed);
  return [
    {
      path: `${fixtureMaker(mold)}/${origin?.only ? 'chosen-solids.3mf' : 'all-solids.3mf'}`,
      bytes: packModel(modelText(mold.title, items)),
    },
  ];
}

function layOut(
  solids: readonly CheckedSolid[],
  given: { readonly x: number; readonly y: number; readonly margin: number } | undefined,
): ModelItem[] {
  const areas = solids.map(({ audit: { bounds } }) => ({
    x: bounds.max[0] - bounds.min[0],
    y: bounds.max[1] - bounds.min[1],
  }));
  const bed = given ?? roomyBed(areas);
  const pitch = Math.max(bed.x, ...areas.map(({ x }) => x)) + aisle;
  const places = placeOnBeds(areas, bed, given?.margin);
  return solids.map(({ solid: { id, title, role, mesh }, audit: { bounds } }, i) => {
    const { bed: number, x, y } = places[i];
    const at = [number * pitch + x - bounds.min[0], y - bounds.min[1], -bounds.min[2]] as const;
    return { id, title, role, mesh, at: [rounded(at[0]), rounded(at[1]), rounded(at[2])] };
  });
}

/** To a hundredth of a mm, upward, so that nothing leaves the positive octant; + 0 turns -0 into 0. */
const rounded = (value: number): number => Math.ceil(value * 100 - 1e-6) / 100 + 0;
