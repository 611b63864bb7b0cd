import { effect } from '@preact/signals';
import {
  AlwaysStencilFunc,
  BackSide,
  CanvasTexture,
  DecrementWrapStencilOp,
  FrontSide,
  Group,
  IncrementWrapStencilOp,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  NotEqualStencilFunc,
  Plane,
  PlaneGeometry,
  RepeatWrapping,
  ReplaceStencilOp,
  Vector3,
} from 'three';
import { mold, pictured } from '../../state/store.ts';
import { apart, type Cut, cut, hidden, pose, seeThrough, wrongTurn } from '../../state/view.ts';
import { kinds } from '../kinds.ts';
import { emptyGroup, type Stage } from '../stage.ts';

const normals = { x: [-1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] } as const;
/** Edge of the filling squares, mm: beyond any disc. */
const capSize = 2400;
/** Distance of the hatching lines, as a share of the disc's radius. */
const hatchShare = 0.055;

/** The plane of a cut, in the frame of the picture: what it faces away from is cut off. */
export function planeOf({ axis, at }: Cut): Plane {
  const [x, y, z] = normals[axis];
  return new Plane().setFromNormalAndCoplanarPoint(
    new Vector3(x, y, z),
    new Vector3(x, y, z).multiplyScalar(-at * (axis === 'y' ? -1 : 1)),
  );
}

/**
 * The movable plane that the picture is cut off at. Where it goes through solids the cut is filled: for each kind the
 * stencil counts back faces up and front faces down, and what is left over is inside; a hatched square is drawn there.
 */
export function cutPlane(stage: Stage): () => void {
  const plane = new Plane();
  const marks = new Group();
  stage.scene.add(marks);
  const stop = effect(() => {
    void [pictured.value, hidden.value, seeThrough.value];
    void [apart.value, pose.value, wrongTurn.value];
    emptyGroup(marks, geometriesOf(stage));
    const where = cut.value;
    if (where) plane.copy(planeOf(where));
    const closed = new Map<string, Mesh[]>();
    stage.scene.traverse((object) => {
      if (!(object instanceof Mesh) || typeof object.userData.kind !== 'string') return;
      const { material } = object;
      if (!(material instanceof MeshStandardMaterial)) return;
      material.clippingPlanes = where ? [plane] : [];
      if (!where || !object.visible || object.userData.closed !== true || material.transparent) return;
      closed.set(object.userData.kind, [...(closed.get(object.userData.kind) ?? []), object]);
    });
    for (const [index, kind] of kinds.entries()) {
      const meshes = closed.get(kind.id);
      if (meshes) fill(stage, marks, plane, meshes, { color: kind.color, order: 10 + index, index });
    }
    stage.draw();
  });
  return () => {
    stop();
    stage.scene.remove(marks);
  };
}

const geometriesOf = (stage: Stage) => {
  const all = new Set<Mesh['geometry']>();
  stage.scene.traverse((object) => {
    if (object instanceof Mesh && object.userData.kind) all.add(object.geometry);
  });
  return all;
};

interface Cap {
  readonly color: string;
  readonly order: number;
  readonly index: number;
}

/** Draws nothing, but counts in the stencil how often the eye looks into a solid. */
function counting(side: typeof BackSide | typeof FrontSide, plane: Plane): MeshBasicMaterial {
  const op = side === BackSide ? IncrementWrapStencilOp : DecrementWrapStencilOp;
  return new MeshBasicMaterial({
    side,
    colorWrite: false,
    depthWrite: false,
    depthTest: false,
    stencilWrite: true,
    stencilFunc: AlwaysStencilFunc,
    stencilFail: op,
    stencilZFail: op,
    stencilZPass: op,
    clippingPlanes: [plane],
  });
}

function fill(
  stage: Stage,
  marks: Group,
  plane: Plane,
  meshes: readonly Mesh[],
  { color, order, index }: Cap,
) {
  for (const mesh of meshes) {
    mesh.updateWorldMatrix(true, false);
    for (const side of [BackSide, FrontSide] as const) {
      const counter = new Mesh(mesh.geometry, counting(side, plane));
      counter.matrixAutoUpdate = false;
      counter.matrix.copy(mesh.matrixWorld);
      counter.renderOrder = order;
      marks.add(counter);
    }
  }
  const cap = new Mesh(
    new PlaneGeometry(capSize, capSize),
    new MeshBasicMaterial({
      color,
      map: hatching(index),
      stencilWrite: true,
      stencilRef: 0,
      stencilFunc: NotEqualStencilFunc,
      stencilFail: ReplaceStencilOp,
      stencilZFail: ReplaceStencilOp,
      stencilZPass: ReplaceStencilOp,
    }),
  );
  plane.coplanarPoint(cap.position);
  cap.lookAt(cap.position.clone().sub(plane.normal));
  cap.renderOrder = order + 0.5;
  cap.onAfterRender = () => stage.renderer.clearStencil();
  marks.add(cap);
}

/** Slanting lines as on a drawing, the other way for every other kind. White takes on the kind's color. */
function hatching(index: number): CanvasTexture {
  const size = 32;
  const canvas = document.createElement('canvas');
  canvas.width = size;
  canvas.height = size;
  const pen = canvas.getContext('2d');
  if (pen) {
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, size, size);
    pen.strokeStyle = '#b9b4ab';
    pen.lineWidth = 4;
    const up = index % 2 === 0;
    for (const shift of [-size, 0, size]) {
      pen.beginPath();
      pen.moveTo(shift, up ? size : 0);
      pen.lineTo(shift + size, up ? 0 : size);
      pen.stroke();
    }
  }
  const texture = new CanvasTexture(canvas);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  const step = hatchShare * (mold.peek()?.disc.radius ?? 100);
  texture.repeat.set(capSize / step, capSize / step);
  return texture;
}
