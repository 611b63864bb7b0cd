import { effect } from '@preact/signals';
import {
  BackSide,
  Color,
  Data3DTexture,
  DataTexture,
  DoubleSide,
  FloatType,
  Group,
  LinearFilter,
  Matrix4,
  Mesh,
  RedFormat,
  ShaderMaterial,
} from 'three';
import { filledShare, shownFillings } from '../../state/filling.ts';
import { masterMeshes, mold } from '../../state/store.ts';
import { cut, hidden, lightNow, openPanel } from '../../state/view.ts';
import { linearAt } from '../../state/wall-ramp.ts';
import { type FillGrid, lastOrder, neverFilled } from '../../worker/fill-grid.ts';
import type { ShownFilling } from '../../worker/messages.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';
import { geometryOf } from '../thing.ts';
import { planeOf } from './cut-plane.ts';

const shades = 256;

const vertexShader = `
#include <clipping_planes_pars_vertex>
uniform mat4 toGrid;
varying vec3 at;
void main() {
  at = (toGrid * vec4(position, 1.0)).xyz;
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  gl_Position = projectionMatrix * mvPosition;
  #include <clipping_planes_vertex>
}`;

/** Not lit: a color has to be the one on the scale. Where metal never comes there are stripes. */
const fragmentShader = `
#include <clipping_planes_pars_fragment>
uniform sampler3D order;
uniform sampler2D ramp;
uniform float share;
uniform vec3 empty;
varying vec3 at;
void main() {
  #include <clipping_planes_fragment>
  float step = texture(order, at).r * 255.0;
  float when = clamp((step - 1.0) / ${lastOrder - 1}.0, 0.0, 1.0);
  vec3 color = when <= share ? texture2D(ramp, vec2(when, 0.5)).rgb : empty;
  if (step > ${neverFilled}.0 - 0.5) color = mod(gl_FragCoord.x + gl_FragCoord.y, 8.0) < 3.0 ? vec3(0.0) : empty;
  gl_FragColor = vec4(color, 1.0);
  #include <colorspace_fragment>
}`;

/**
 * The walls of the cavities in the order metal comes to them, while the sheet on filling is open: painted on the masters where
 * these are shown; where not, and in the upper half, on the far side of each shell, as seen from within the cavity.
 */
export function fillOrder(stage: Stage): () => void {
  const groups = { lower: new Group(), upper: new Group() };
  stage.sides.lower.add(groups.lower);
  stage.sides.upper.add(groups.upper);
  const shared = { ramp: { value: rampTexture() }, share: { value: 1 }, empty: { value: new Color() } };
  let grids = new Map<FillGrid, Data3DTexture>();
  const textureOf = (grid: FillGrid): Data3DTexture => {
    const texture = grids.get(grid) ?? gridTexture(grid);
    grids.set(grid, texture);
    return texture;
  };
  const stops = [
    effect(() => {
      for (const group of Object.values(groups)) emptyGroup(group);
      const shown = openPanel.value === 'filling' ? shownFillings.value : [];
      const away = hidden.value;
      const clip = cut.value ? [planeOf(cut.value)] : [];
      grids = withoutUnused(grids, shown);
      for (const one of shown) {
        const placement = mold.value?.placements.find(({ id }) => id === one.subject);
        const mesh = placement && masterMeshes.value.get(placement.master);
        if (!placement || !mesh) continue;
        const geometry = geometryOf(mesh);
        const toGrid = { value: gridMatrix(one).multiply(new Matrix4().fromArray([...placement.matrix])) };
        const uniforms = { ...shared, toGrid, order: { value: textureOf(one.grid) } };
        const shell = (inside: boolean): Mesh => {
          const made = new Mesh(geometry, painted(uniforms, inside, clip));
          made.matrixAutoUpdate = false;
          made.matrix.fromArray([...placement.matrix]);
          return made;
        };
        const inside = away.has('master');
        if (!inside || !away.has('lower half')) groups.lower.add(shell(inside));
        if (!away.has('upper half')) groups.upper.add(shell(true));
      }
      stage.draw();
    }),
    effect(() => {
      void lightNow.value;
      shared.share.value = filledShare.value;
      shared.empty.value.set(styleColor('--unfilled'));
      stage.draw();
    }),
  ];
  return () => {
    for (const stop of stops) stop();
    shared.ramp.value.dispose();
    for (const texture of grids.values()) texture.dispose();
    for (const half of ['lower', 'upper'] as const) {
      emptyGroup(groups[half]);
      stage.sides[half].remove(groups[half]);
    }
  };
}

function painted(
  uniforms: ShaderMaterial['uniforms'],
  inside: boolean,
  clippingPlanes: ReturnType<typeof planeOf>[],
): ShaderMaterial {
  const material = new ShaderMaterial({
    vertexShader,
    fragmentShader,
    side: inside ? BackSide : DoubleSide,
    clipping: true,
    clippingPlanes,
    // It lies in the same place as master or half: before these.
    polygonOffset: true,
    polygonOffsetFactor: -2,
    polygonOffsetUnits: -2,
  });
  // Kept as they are, so that one value serves all.
  Object.assign(material.uniforms, uniforms);
  return material;
}

/** From the mold frame to the texture of the grid: 0 to 1 along each axis. */
function gridMatrix({ turnRad, grid: { cell, low, size } }: ShownFilling): Matrix4 {
  const [x, y, z] = low.map((value, axis) => (0.5 - value / cell) / size[axis]);
  return new Matrix4()
    .makeTranslation(x, y, z)
    .multiply(new Matrix4().makeScale(1 / (size[0] * cell), 1 / (size[1] * cell), 1 / (size[2] * cell)))
    .multiply(new Matrix4().makeRotationZ(-turnRad));
}

function gridTexture({ order, size }: FillGrid): Data3DTexture {
  const texture = new Data3DTexture(order as Uint8Array<ArrayBuffer>, ...size);
  texture.format = RedFormat;
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  texture.unpackAlignment = 1;
  texture.needsUpdate = true;
  return texture;
}

function withoutUnused(
  grids: ReadonlyMap<FillGrid, Data3DTexture>,
  shown: readonly ShownFilling[],
): Map<FillGrid, Data3DTexture> {
  const used = new Set(shown.map(({ grid }) => grid));
  const kept = new Map<FillGrid, Data3DTexture>();
  for (const [grid, texture] of grids) {
    if (used.has(grid)) kept.set(grid, texture);
    else texture.dispose();
  }
  return kept;
}

/** The scale as linear light. */
function rampTexture(): DataTexture {
  const colors = new Float32Array(4 * shades);
  for (let i = 0; i < shades; i++) colors.set([...linearAt(i / (shades - 1)), 1], 4 * i);
  const texture = new DataTexture(colors, shades, 1);
  texture.type = FloatType;
  texture.needsUpdate = true;
  return texture;
}
