import { effect } from '@preact/signals';
import {
  BackSide,
  BufferAttribute,
  type BufferGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
} from 'three';
import { mold, walls } from '../../state/store.ts';
import { cut, hidden, openPanel } from '../../state/view.ts';
import { linearAt } from '../../state/wall-ramp.ts';
import { scaleEnd } from '../../state/walls.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { geometryOf } from '../thing.ts';
import { planeOf } from './cut-plane.ts';

const shades = 256;

/**
 * The walls of the cavities in the colors of their thickness, while the sheet on walls is open. They are painted on
 * the masters where these are shown; where not, and in the upper half, only the far side of each shell is drawn, which
 * is the wall as it is seen from within the cavity. Not lit: a color has to be the one on the scale.
 */
export function wallColors(stage: Stage): () => void {
  const groups = { lower: new Group(), upper: new Group() };
  stage.sides.lower.add(groups.lower);
  stage.sides.upper.add(groups.upper);
  const stop = effect(() => {
    for (const group of Object.values(groups)) emptyGroup(group);
    const shown = openPanel.value === 'walls' ? walls.value : undefined;
    const away = hidden.value;
    const where = cut.value;
    const colors = palette();
    for (const { subject, master, distances } of shown?.walls ?? []) {
      const placement = mold.value?.placements.find(({ id }) => id === subject);
      const mesh = shown?.meshes.find(({ id }) => id === master)?.mesh;
      if (!placement || !mesh) continue;
      const geometry = geometryOf(mesh);
      geometry.setAttribute('color', colored(distances, scaleEnd.value, colors));
      const clip = where ? [planeOf(where)] : [];
      const inside = away.has('master');
      if (!inside || !away.has('lower half'))
        groups.lower.add(shell(geometry, placement.matrix, inside, clip));
      if (!away.has('upper half')) groups.upper.add(shell(geometry, placement.matrix, true, clip));
    }
    stage.draw();
  });
  return () => {
    stop();
    for (const half of ['lower', 'upper'] as const) {
      emptyGroup(groups[half]);
      stage.sides[half].remove(groups[half]);
    }
  };
}

function shell(
  geometry: BufferGeometry,
  matrix: readonly number[],
  inside: boolean,
  clippingPlanes: ReturnType<typeof planeOf>[],
): Mesh {
  const material = new MeshBasicMaterial({
    vertexColors: true,
    side: inside ? BackSide : DoubleSide,
    clippingPlanes,
    // It lies in the same place as master or half: before these.
    polygonOffset: true,
    polygonOffsetFactor: -2,
    polygonOffsetUnits: -2,
  });
  const mesh = new Mesh(geometry, material);
  mesh.matrixAutoUpdate = false;
  mesh.matrix.fromArray(matrix as number[]);
  return mesh;
}

/** The scale as linear light, three numbers a shade. */
function palette(): Float32Array {
  const colors = new Float32Array(3 * shades);
  for (let i = 0; i < shades; i++) colors.set(linearAt(i / (shades - 1)), 3 * i);
  return colors;
}

function colored(distances: Float32Array, end: number, colors: Float32Array): BufferAttribute {
  const values = new Float32Array(3 * distances.length);
  for (let i = 0; i < distances.length; i++) {
    const shade = Math.round((shades - 1) * Math.min(1, Math.max(0, distances[i] / end)));
    values.set(colors.subarray(3 * shade, 3 * shade + 3), 3 * i);
  }
  return new BufferAttribute(values, 3);
}
