import { makeFigure } from '../../findings/index.ts';
import { type Matrix4, moveMesh, type TriangleMesh, toDegrees } from '../../geometry/index.ts';
import { type Check, check, cropSurface, heightAt, masterOf, type PartingSurface } from '../../mold/index.ts';

/** Width of a column of the histogram, degrees. */
const step = 5;
/** Walls with less draft than this drag, degrees; common practice, no published source. */
const least = 1;
const source = 'angle of each face to the vertical, weighted by its area';

interface DraftInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly surface: PartingSurface;
  readonly estimated: boolean;
}

/**
 * Draft of the cavity's faces in rigid halves, before any relief: the angle by which a face opens toward the parting
 * surface, 0 on a vertical wall, 90 on a floor, below 0 where it is undercut. Area over draft as a series.
 */
export const draft: Check = check<DraftInput>({
  id: 'draft',
  title: 'Draft of the cavities',
  follows: false,
  processes: ['rigid'],
  units: (mold) =>
    mold.placements.map(({ id, master, matrix, estimated, x, y, reach }) => ({
      subject: id,
      about: [id],
      input: {
        id,
        mesh: masterOf(mold, { id, master }).mesh,
        matrix,
        surface: cropSurface(mold.parting, { min: [x - reach, y - reach], max: [x + reach, y + reach] }),
        estimated,
      },
    })),
  run: ({ id, mesh, matrix, surface, estimated }) => {
    const values = new Array<number>(180 / step).fill(0);
    let little = 0;
    for (const { degrees, area } of faces(moveMesh(mesh, matrix), surface)) {
      const column = Math.min(values.length - 1, Math.max(0, Math.floor((degrees + 90) / step + 1e-9)));
      values[column] += area;
      if (degrees < least) little += area;
    }
    const low = makeFigure('draft.little', { subject: id, value: little, source, estimated });
    const middles = values.map((_, column) => (column + 0.5) * step - 90);
    return {
      figures: [low],
      series: [
        {
          name: 'draft.area',
          subject: id,
          x: { label: 'draft', unit: 'deg', values: middles },
          y: { label: 'area', unit: 'mm2', values },
        },
      ],
    };
  },
});

/** Draft and area (mm2) of every face; which half it is in is told by its middle. */
function* faces(
  { positions: p, triangles }: TriangleMesh,
  surface: PartingSurface,
): Generator<{ readonly degrees: number; readonly area: number }> {
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const twice = Math.hypot(nx, ny, nz);
    if (!(twice > 0)) continue;
    const middle = [0, 1, 2].map((axis) => (p[a + axis] + p[b + axis] + p[c + axis]) / 3);
    const away = middle[2] < heightAt(surface, middle[0], middle[1]) ? -1 : 1;
    const sine = Math.max(-1, Math.min(1, (away * nz) / twice));
    yield { degrees: toDegrees(Math.asin(sine)), area: twice / 2 };
  }
}
