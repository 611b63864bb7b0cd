/**
 * Draws the README's pictures from a built mold: `tsx docs/pictures.ts out/<folder> [docs]`. Reads the folder's
 * manifest.json and STL files and writes lower-half.png, upper-half.png, sprue-form.png and exploded.png.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Color, renderPicture, type View } from '../src/export/picture.ts';
import { roleColor } from '../src/export/role-color.ts';
import {
  compose,
  type Matrix4,
  movePoint,
  rotation,
  type TriangleMesh,
  translation,
  type Vec3,
} from '../src/geometry/index.ts';
import type { SolidRole } from '../src/kinds/index.ts';

interface Listed {
  readonly path: string;
  readonly solid?: {
    readonly id: string;
    readonly role: SolidRole;
    readonly volumeMm3: number;
    readonly boundsMm: { readonly min: Vec3; readonly max: Vec3 };
    readonly toMold: Matrix4;
  };
}

type Shown = Listed & { readonly solid: NonNullable<Listed['solid']> };

interface Shot {
  readonly name: string;
  readonly color: Color;
  readonly view: View;
  readonly width: number;
  readonly height: number;
  pick(solids: readonly Shown[]): Shown | undefined;
  stand(solid: Shown['solid']): Matrix4;
}

const fromAbove: View = { direction: [0.22, 0.62, -0.76], up: [0, 0, 1] };
const fromTheSide: View = { direction: [0.5, 0.75, -0.45], up: [0, 0, 1] };
const inMold = (solid: Shown['solid']): Matrix4 => solid.toMold;

/** Whether the middle of its box is below the parting plane once it stands in the mold. */
const isLower = ({ solid }: Shown): boolean => {
  const { min, max } = solid.boundsMm;
  const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  return movePoint(solid.toMold, middle)[2] < 0;
};

const largest = (solids: readonly Shown[], role: string): Shown | undefined =>
  solids.filter(({ solid }) => solid.role === role).sort((a, b) => b.solid.volumeMm3 - a.solid.volumeMm3)[0];

const shots: readonly Shot[] = [
  {
    name: 'lower-half',
    color: [0.7, 0.74, 0.66],
    view: fromAbove,
    width: 1000,
    height: 760,
    pick: (solids) => solids.find((shown) => shown.solid.role === 'half' && isLower(shown)),
    stand: inMold,
  },
  {
    // Turned over like the lid of a box, so that its parting face is seen.
    name: 'upper-half',
    color: [0.79, 0.72, 0.6],
    view: fromAbove,
    width: 1000,
    height: 760,
    pick: (solids) => solids.find((shown) => shown.solid.role === 'half' && !isLower(shown)),
    stand: (solid) => compose(rotation('x', Math.PI), solid.toMold),
  },
  {
    name: 'sprue-form',
    color: [0.66, 0.55, 0.5],
    view: fromTheSide,
    width: 640,
    height: 640,
    pick: (solids) => largest(solids, 'sprue form'),
    stand: inMold,
  },
];

const most = 300_000;

/** How far above (or below) its place in the mold a fixture is drawn, mm; what has no row is left out. */
const lifts: Partial<Record<SolidRole, number>> = {
  plug: 150,
  'sprue form': 60,
  boss: 35,
  'build-up': 25,
  tab: 20,
  notch: 20,
  half: 0,
  jig: -60,
  'layout plate': -110,
};

/** All fixtures above and below the lower half, each over its place. */
async function drawExploded(folder: string, target: string, solids: readonly Shown[]): Promise<void> {
  const shown = solids.filter((one) => one.solid.role !== 'half' || isLower(one));
  const items = [];
  for (const { path, solid } of shown) {
    const lift = lifts[solid.role];
    if (lift === undefined) continue;
    const mesh = weldedStl(await readFile(join(folder, path)));
    const matrix = compose(translation(0, 0, lift), solid.toMold);
    items.push({ mesh, color: roleColor(solid.role), matrix });
  }
  const view: View = { direction: [0.3, 0.8, -0.5], up: [0, 0, 1] };
  const png = renderPicture({ items, view, width: 1000, height: 900, background: [0.97, 0.96, 0.94] });
  await writeFile(join(target, 'exploded.png'), png);
  console.log(`exploded.png: ${items.length} solids, ${png.length} bytes`);
}

async function draw(folder: string, target: string): Promise<void> {
  const manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8')) as {
    readonly files: readonly Listed[];
  };
  const solids = manifest.files.filter((file): file is Shown => file.solid !== undefined);
  for (const shot of shots) {
    const shown = shot.pick(solids);
    if (!shown) {
      console.log(`${shot.name}: this build has none, no picture drawn`);
      continue;
    }
    const mesh = weldedStl(await readFile(join(folder, shown.path)));
    const png = renderPicture({
      ...shot,
      items: [{ mesh, color: shot.color, matrix: shot.stand(shown.solid) }],
      background: [0.97, 0.96, 0.94],
    });
    if (png.length > most) throw new Error(`${shot.name}.png takes ${png.length} bytes, more than ${most}`);
    await writeFile(join(target, `${shot.name}.png`), png);
    console.log(
      `${shot.name}.png: ${shown.path}, ${mesh.triangles.length / 3} triangles, ${png.length} bytes`,
    );
  }
  await drawExploded(folder, target, solids);
}

/** A binary STL with equal corners joined, so that round things can be shaded smoothly. */
function weldedStl(bytes: Buffer): TriangleMesh {
  const count = bytes.readUInt32LE(80);
  const numbers = new Map<string, number>();
  const positions: number[] = [];
  const triangles = new Uint32Array(count * 3);
  for (let corner = 0; corner < triangles.length; corner++) {
    const at = 84 + 50 * Math.floor(corner / 3) + 12 * (1 + (corner % 3));
    const key = bytes.toString('latin1', at, at + 12);
    let vertex = numbers.get(key);
    if (vertex === undefined) {
      vertex = numbers.size;
      numbers.set(key, vertex);
      positions.push(bytes.readFloatLE(at), bytes.readFloatLE(at + 4), bytes.readFloatLE(at + 8));
    }
    triangles[corner] = vertex;
  }
  return { positions: Float32Array.from(positions), triangles };
}

const [folder, target = import.meta.dirname] = process.argv.slice(2);
if (folder === undefined) {
  console.error('usage: tsx docs/pictures.ts out/<folder> [where to write]');
  process.exitCode = 2;
} else {
  await draw(folder, target);
}
