import {
  AmbientLight,
  type BufferGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  type Material,
  Mesh,
  PerspectiveCamera,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { radPerDegree } from '../../geometry/index.ts';
import type { ViewName } from '../state/view.ts';
import type { Side } from './kinds.ts';

/** Room left round what is fitted. */
const margin = 1.1;
/** Points looked at of each mesh when the picture is fitted. */
const pointsOfEach = 300;

/** Middle and half length of the points' shadow on a line. */
function spanAlong(points: readonly Vector3[], axis: Vector3): { middle: number; half: number } {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const point of points) {
    const at = point.dot(axis);
    least = Math.min(least, at);
    most = Math.max(most, at);
  }
  return { middle: (least + most) / 2, half: (most - least) / 2 };
}

/**
 * The picture: renderer, camera, lights, and the groups things are hung in. Draws only when asked to. Frame: the
 * mold's, mm, z up. The layers in layers/ put things in and move the groups.
 */
export class Stage {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera(26, 1, 1, 8000);
  readonly renderer: WebGLRenderer;
  readonly controls: OrbitControls;
  readonly sides: Readonly<Record<Side, Group>> = {
    lower: new Group(),
    upper: new Group(),
    loose: new Group(),
  };
  /** Called after each picture, such as to place labels. */
  readonly afterDraw = new Set<() => void>();
  private asked = 0;
  /** How the picture was fitted last: again so when its room changes. */
  private fitted: { readonly from: ViewName | undefined; readonly room: number } | undefined;
  /** Whether the person has turned or moved the picture since it was last fitted. */
  isMoved = false;

  constructor(
    readonly canvas: HTMLCanvasElement,
    /** Lies over the picture and is as large: for words. */
    readonly overlay: HTMLElement,
  ) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true });
    this.renderer.localClippingEnabled = true;
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.screenSpacePanning = true;
    // A key press turns by some degrees and moves by a finger's width, not by a hair.
    this.controls.keyRotateSpeed = 8;
    this.controls.keyPanSpeed = 24;
    this.controls.addEventListener('change', () => this.draw());
    this.controls.addEventListener('start', () => {
      this.isMoved = true;
    });
    const key = new DirectionalLight('#fff6e8', 2.1);
    key.position.set(-0.55, -0.35, 0.9);
    const fill = new DirectionalLight('#dfe9f5', 0.5);
    fill.position.set(0.8, 0.3, 0.25);
    // Lights go with the camera, so that hollows look the same from every side.
    this.camera.add(key, fill);
    const sky = new HemisphereLight('#ffffff', '#9a948a', 0.7);
    sky.position.set(0, 0, 1);
    this.scene.add(this.camera, sky, new AmbientLight('#ffffff', 0.35));
    this.scene.add(this.sides.lower, this.sides.upper, this.sides.loose);
  }

  /** Asks for one new picture; any number of times before it is drawn. */
  draw(): void {
    this.asked ||= requestAnimationFrame(() => this.drawNow());
  }

  drawNow(): void {
    cancelAnimationFrame(this.asked);
    this.asked = 0;
    this.renderer.info.autoReset = true;
    this.renderer.render(this.scene, this.camera);
    this.canvas.dataset.triangles = String(this.renderer.info.render.triangles);
    for (const after of this.afterDraw) after();
  }

  resize(width: number, height: number, ratio: number): void {
    this.renderer.setPixelRatio(Math.min(ratio, 2));
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / Math.max(1, height);
    this.camera.updateProjectionMatrix();
    if (this.fitted && !this.isMoved) this.fit(this.fitted.from, this.fitted.room);
    // At once: a new size empties the canvas, and the old picture must not be seen stretched.
    this.drawNow();
  }

  /** Some of the points of all that is shown, world: enough to know how far it reaches each way. */
  private points(): Vector3[] {
    const points: Vector3[] = [];
    for (const group of Object.values(this.sides)) {
      if (!group.visible) continue;
      group.updateMatrixWorld(true);
      group.traverseVisible((thing) => {
        if (!(thing instanceof Mesh) || !thing.userData.kind) return;
        const place = thing.geometry.getAttribute('position');
        const stride = Math.max(1, Math.floor(place.count / pointsOfEach));
        for (let i = 0; i < place.count; i += stride) {
          points.push(new Vector3().fromBufferAttribute(place, i).applyMatrix4(thing.matrixWorld));
        }
      });
    }
    return points;
  }

  /** Shows everything from the direction the camera looks from now, or from a named one; `room` 1 leaves none. */
  fit(from?: ViewName, room = margin): void {
    this.fitted = { from, room };
    const points = this.points();
    if (points.length === 0) return;
    const direction = from
      ? directions[from].clone()
      : this.camera.position.clone().sub(this.controls.target);
    direction.normalize();
    const right = new Vector3().crossVectors(this.camera.up, direction).normalize();
    const up = new Vector3().crossVectors(direction, right);
    const [across, along, toward] = [right, up, direction].map((axis) => spanAlong(points, axis));
    const middle = new Vector3()
      .addScaledVector(right, across.middle)
      .addScaledVector(up, along.middle)
      .addScaledVector(direction, toward.middle);
    const tangent = Math.tan((this.camera.fov / 2) * radPerDegree);
    const distance =
      Math.max(along.half / tangent, across.half / (tangent * this.camera.aspect)) * room + toward.half * 0.6;
    this.controls.target.copy(middle);
    this.isMoved = false;
    this.camera.position.copy(middle).addScaledVector(direction, distance);
    this.controls.update();
    this.draw();
  }

  /** Nearer (a share below 1) or farther from what is looked at. */
  zoom(share: number): void {
    this.isMoved = true;
    const offset = this.camera.position.clone().sub(this.controls.target);
    this.camera.position.copy(this.controls.target).addScaledVector(offset, share);
    this.controls.update();
    this.draw();
  }

  /** Brings a place (world) to the middle, and near. */
  flyTo(place: Vector3): void {
    this.isMoved = true;
    const offset = this.camera.position.clone().sub(this.controls.target);
    offset.setLength(Math.min(offset.length(), 160));
    this.controls.target.copy(place);
    this.camera.position.copy(place).add(offset);
    this.controls.update();
    this.draw();
  }
}

/** Where the camera stands in the named views; a little off the axis, where up would be no direction. */
const directions: Readonly<Record<ViewName, Vector3>> = {
  'from above': new Vector3(0, -0.0008, 1),
  'from below': new Vector3(0, -0.0008, -1),
  'from the side': new Vector3(0, -1, 0.0001),
  'over the shoulder': new Vector3(0.35, -1, 0.85),
};

/** Empties a group and gives back what its meshes held in the graphics memory. */
export function emptyGroup(group: Group, keep: ReadonlySet<BufferGeometry> = new Set()): void {
  for (const child of [...group.children]) {
    group.remove(child);
    if (!(child instanceof Mesh)) continue;
    if (!keep.has(child.geometry)) child.geometry.dispose();
    for (const material of [child.material].flat() as Material[]) material.dispose();
  }
}
