import { Plane, Raycaster, Vector2, Vector3 } from 'three';
import type { Point2 } from '../../geometry/index.ts';
import type { Stage } from './stage.ts';

type At = Pick<PointerEvent, 'clientX' | 'clientY'>;

/** The ray from the eye through the pointer. */
export function rayOf({ canvas, camera }: Stage, { clientX, clientY }: At): Raycaster {
  const box = canvas.getBoundingClientRect();
  const ray = new Raycaster();
  const across = ((clientX - box.left) / box.width) * 2 - 1;
  ray.setFromCamera(new Vector2(across, 1 - ((clientY - box.top) / box.height) * 2), camera);
  return ray;
}

/** Where the pointer meets the parting plane of a half, in its frame. */
export function onPlane(stage: Stage, event: At, side: 'lower' | 'upper'): Point2 | undefined {
  const { ray } = rayOf(stage, event);
  const own = ray.clone().applyMatrix4(stage.sides[side].matrixWorld.clone().invert());
  const at = own.intersectPlane(new Plane(new Vector3(0, 0, 1), 0), new Vector3());
  return at ? [at.x, at.y] : undefined;
}
