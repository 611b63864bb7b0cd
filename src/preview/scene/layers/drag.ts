import { effect } from '@preact/signals';
import { Matrix4, Mesh, type Object3D, Plane, Raycaster, Vector2, Vector3 } from 'three';
import { arranging, cancelDrag, doing, dragTo, finishDrag, snapped } from '../../state/drag.ts';
import { dragged, dragState, itemOf, type Pose, poseOf } from '../../state/drag-state.ts';
import { mold, picked, pictured, pointedAt, solids } from '../../state/store.ts';
import type { Stage } from '../stage.ts';

/** Things in the picture picked up by the pointer, and shown where they are dragged to. */
export function drag(stage: Stage): () => void {
  const stops = [showDragged(stage), pickUpByPointer(stage), sayScale(stage)];
  return () => {
    for (const stop of stops) stop();
  };
}

/**
 * Says on the canvas where the disc's center is drawn and how many pixels a millimeter of the parting plane has there,
 * so that a place on the disc can be pointed at from outside.
 */
function sayScale(stage: Stage): () => void {
  const { canvas, camera, sides } = stage;
  const say = () => {
    const [center, beside] = [new Vector3(), new Vector3(1, 0, 0)].map((place) => {
      const { x, y } = place.applyMatrix4(sides.lower.matrixWorld).project(camera);
      return new Vector2(((x + 1) / 2) * canvas.clientWidth, ((1 - y) / 2) * canvas.clientHeight);
    });
    canvas.dataset.disc = `${center.x} ${center.y} ${center.distanceTo(beside)}`;
  };
  stage.afterDraw.add(say);
  return () => {
    stage.afterDraw.delete(say);
  };
}

/** Puts what is dragged where it is dragged to; when the plan has caught up, the new picture has it there. */
function showDragged(stage: Stage): () => void {
  const before = new WeakMap<Object3D, Matrix4>();
  let moved: Mesh[] = [];
  // Tabs stand where the solids were made for; the mold they were made for tells the way from there.
  let tabsAt = new Map<string, number>();
  const stops = [
    effect(() => {
      if (solids.value.length > 0)
        tabsAt = new Map((mold.peek()?.tabs ?? []).map(({ id, angleRad }) => [id, angleRad]));
    }),
    effect(() => {
      void pictured.value;
      for (const mesh of moved) put(mesh, before.get(mesh));
      moved = [];
      const now = dragged.value;
      if (now && now.kind !== 'tab') show(now.id, new Matrix4().fromArray([...now.matrix]));
      for (const { id, angleRad } of mold.value?.tabs ?? []) {
        const angle = now?.id === id ? (dragState.value?.pose.angleRad ?? angleRad) : angleRad;
        const by = angle - (tabsAt.get(id) ?? angle);
        if (by !== 0) show(id, new Matrix4().makeRotationZ(by));
      }
      stage.draw();
    }),
  ];
  const show = (id: string, way: Matrix4) => {
    stage.scene.traverse((object) => {
      if (!(object instanceof Mesh) || object.userData.subject !== id) return;
      const from = before.get(object) ?? object.matrix.clone();
      before.set(object, from);
      put(object, new Matrix4().multiplyMatrices(way, from));
      moved.push(object);
    });
  };
  return () => {
    for (const stop of stops) stop();
  };
}

function put(mesh: Mesh, matrix: Matrix4 | undefined): void {
  if (!matrix) return;
  mesh.matrix.copy(matrix);
  mesh.matrixWorldNeedsUpdate = true;
}

const movable = new Set(['master', 'boss', 'tab']);

interface Grip {
  readonly pointer: number;
  readonly id: string;
  readonly from: Pose;
  /** Where it was taken, in the lower half's frame, and on the screen. */
  readonly at: Vector3;
  readonly screenY: number;
  /** Millimeters to a pixel there. */
  readonly scale: number;
}

/** What the pointer is over. */
class Pointer {
  private readonly ray = new Raycaster();
  constructor(private readonly stage: Stage) {}

  aim({ clientX, clientY }: PointerEvent): void {
    const { canvas, camera } = this.stage;
    const box = canvas.getBoundingClientRect();
    const across = ((clientX - box.left) / box.width) * 2 - 1;
    this.ray.setFromCamera(new Vector2(across, 1 - ((clientY - box.top) / box.height) * 2), camera);
  }

  /** Id of the thing that can be moved. */
  under(): string | undefined {
    const meshes: Mesh[] = [];
    this.stage.sides.lower.traverseVisible((object) => {
      if (object instanceof Mesh && movable.has(object.userData.kind)) meshes.push(object);
    });
    return this.ray.intersectObjects(meshes, false)[0]?.object.userData.subject;
  }

  /** Where the ray meets the parting plane, in the lower half's frame. */
  onPlane(): Vector3 | undefined {
    const ray = this.ray.ray.clone().applyMatrix4(this.stage.sides.lower.matrixWorld.clone().invert());
    return ray.intersectPlane(new Plane(new Vector3(0, 0, 1), 0), new Vector3()) ?? undefined;
  }
}

/** The grip on what the pointer is over, if it can be moved. */
function gripOn(
  pointer: Pointer,
  { canvas, camera, controls }: Stage,
  { pointerId, clientY }: PointerEvent,
): Grip | undefined {
  const id = pointer.under();
  const from = id === undefined ? undefined : poseOf(id);
  const at = pointer.onPlane();
  if (id === undefined || !from || !at) return undefined;
  const viewHeight = 2 * camera.position.distanceTo(controls.target) * Math.tan((camera.fov * Math.PI) / 360);
  return { pointer: pointerId, id, from, at, screenY: clientY, scale: viewHeight / canvas.clientHeight };
}

function pickUpByPointer(stage: Stage): () => void {
  const { canvas } = stage;
  const pointer = new Pointer(stage);
  let grip: Grip | undefined;

  const down = (event: PointerEvent): void => {
    // One thing in one hand: another finger meanwhile neither takes a second nor turns the picture.
    if (grip) {
      event.stopImmediatePropagation();
      return;
    }
    if (!arranging.peek() || event.button !== 0) return;
    pointer.aim(event);
    grip = gripOn(pointer, stage, event);
    if (!grip) return;
    // Before the camera's own controls get it: what is taken does not turn the picture.
    event.stopImmediatePropagation();
    event.preventDefault();
    canvas.setPointerCapture(event.pointerId);
    canvas.focus();
    picked.value = grip.id;
  };
  const move = (event: PointerEvent): void => {
    if (grip?.pointer !== event.pointerId) {
      if (arranging.peek() && event.buttons === 0) {
        pointer.aim(event);
        pointedAt.value = pointer.under();
      }
      return;
    }
    event.stopImmediatePropagation();
    pointer.aim(event);
    const at = pointer.onPlane();
    if (!at) return;
    const pose = poseAfter(grip, at, event.clientY);
    dragTo(grip.id, event.shiftKey ? pose : snapped(pose, grip.from));
  };
  const up = (event: PointerEvent): void => {
    if (grip?.pointer !== event.pointerId) return;
    event.stopImmediatePropagation();
    grip = undefined;
    if (event.type === 'pointercancel') cancelDrag();
    else finishDrag();
  };
  const listeners = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: up };
  for (const [name, listen] of Object.entries(listeners)) {
    canvas.addEventListener(name, listen as EventListener, { capture: true });
  }
  const stop = effect(() => {
    canvas.style.cursor = arranging.value && pointedAt.value && itemOf(pointedAt.value) ? 'grab' : '';
  });
  return () => {
    stop();
    for (const [name, listen] of Object.entries(listeners)) {
      canvas.removeEventListener(name, listen as EventListener, { capture: true });
    }
  };
}

/** The pose a drag gives: along the parting plane, about the thing's own middle, or up and down. */
function poseAfter({ from, at, screenY, scale }: Grip, now: Vector3, y: number): Pose {
  const [cx, cy] = [from.radius * Math.cos(from.angleRad), from.radius * Math.sin(from.angleRad)];
  switch (doing.peek()) {
    case 'move': {
      const [x, v] = [cx + now.x - at.x, cy + now.y - at.y];
      return { ...from, radius: Math.hypot(x, v), angleRad: nearTo(Math.atan2(v, x), from.angleRad) };
    }
    case 'turn': {
      const by = Math.atan2(now.y - cy, now.x - cx) - Math.atan2(at.y - cy, at.x - cx);
      return { ...from, turnRad: nearTo(from.turnRad + by, from.turnRad) };
    }
    case 'sink':
      return { ...from, depth: Math.max(0, from.depth + (y - screenY) * scale) };
  }
}

/** The same angle within half a turn of another. */
const nearTo = (angle: number, other: number): number =>
  angle - 2 * Math.PI * Math.round((angle - other) / (2 * Math.PI));
