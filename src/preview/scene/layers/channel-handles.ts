import { effect } from '@preact/signals';
import { Mesh, Vector3 } from 'three';
import type { Point2 } from '../../../geometry/index.ts';
import type { Channel } from '../../../mold/index.ts';
import {
  type ChannelPoint,
  type ChannelPoints,
  held,
  movableChannels,
  pickedChannel,
  shownPoints,
  tried,
} from '../../state/channel-state.ts';
import { addPoint, cancelHold, fromAxis, holdPoint, middle, release } from '../../state/channels.ts';
import { picked } from '../../state/store.ts';
import { lightNow, openPanel } from '../../state/view.ts';
import type { TriedChannel } from '../../worker/messages.ts';
import { onPlane, rayOf } from '../on-plane.ts';
import { Overlay } from '../overlay.ts';
import type { Stage } from '../stage.ts';
import { styleColor } from '../text-label.ts';

/** A handle in the picture; one that adds a way point does so before that of its number. */
interface Handle {
  readonly point: ChannelPoint | { readonly before: number };
  readonly at: Point2;
  readonly side: Channel['half'];
}

/** How near the pointer has to come, px; a finger is wider. */
const [near, nearFinger] = [12, 24];

const isAdding = (point: Handle['point']): point is { readonly before: number } => typeof point === 'object';

/** Gates and vents taken hold of while the sheet on filling is open: picked, and their points dragged. */
export function channelHandles(stage: Stage): () => void {
  const overlays = { lower: new Overlay(stage, 'lower'), upper: new Overlay(stage, 'upper') };
  let shown: { readonly handle: Handle; readonly element: HTMLElement }[] = [];
  const place = (): void => {
    for (const { handle, element } of shown) {
      const [x, y] = onCanvas(stage, handle);
      element.style.transform = `translate(-50%, -50%) translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
    }
  };
  stage.afterDraw.add(place);
  const stop = effect(() => {
    for (const { element } of shown) element.remove();
    shown = [];
    for (const overlay of Object.values(overlays)) overlay.clear();
    void lightNow.value;
    const [one, known] = [pickedChannel.value, shownPoints.value];
    if (one && known && openPanel.value === 'filling') {
      const trial = held.value && tried.value?.id === one.id ? tried.value : undefined;
      const points = trial ? asTried(one, known, trial) : known;
      const way = trial?.run ?? fromAxis(one, points);
      const ink = styleColor(trial && !trial.isFree ? '--stop' : '--flame');
      overlays[one.half].lines(
        way.slice(1).flatMap(([x, y], i) => [[...way[i], 0] as const, [x, y, 0] as const]),
        ink,
        3,
      );
      shown = handlesOf(one, points).map((handle) => {
        const element = document.createElement('span');
        element.className = `handle is-${isAdding(handle.point) ? 'new' : typeof handle.point === 'number' ? 'way' : handle.point}`;
        stage.overlay.append(element);
        return { handle, element };
      });
    }
    stage.draw();
  });
  const stopPointer = followPointer(stage, () => shown.map(({ handle }) => handle));
  return () => {
    stop();
    stopPointer();
    stage.afterDraw.delete(place);
    for (const { element } of shown) element.remove();
    for (const overlay of Object.values(overlays)) overlay.remove();
  };
}

/** Where a try puts the ends: on the outline, and at well or rim. */
function asTried({ kind }: Channel, points: ChannelPoints, { entry, run }: TriedChannel): ChannelPoints {
  const end = run && (kind === 'gate' ? run[0] : run[run.length - 1]);
  return { ...points, ...(entry && { entry: entry.at }), ...(end && { end }) };
}

function handlesOf(one: Channel, points: ChannelPoints): Handle[] {
  const side = one.half;
  const places = fromAxis(one, points);
  const added = places
    .slice(1)
    .map((to, before): Handle => ({ point: { before }, at: middle(places[before], to), side }));
  return [
    ...added,
    ...points.through.map(({ at }, point): Handle => ({ point, at, side })),
    // What leads out of another channel ends there, not at well or rim.
    ...(one.opensInto === undefined ? [{ point: 'end', at: points.end, side } as const] : []),
    { point: 'entry', at: points.entry, side },
  ];
}

/** Where a handle is drawn, px from the corner of the canvas. */
function onCanvas({ canvas, camera, sides }: Stage, { at, side }: Handle): [number, number] {
  const { x, y } = new Vector3(at[0], at[1], 0).applyMatrix4(sides[side].matrixWorld).project(camera);
  return [((x + 1) / 2) * canvas.clientWidth, ((1 - y) / 2) * canvas.clientHeight];
}

/** The gate or vent under the pointer. */
function channelUnder(stage: Stage, event: PointerEvent): string | undefined {
  const meshes: Mesh[] = [];
  for (const side of ['lower', 'upper'] as const)
    stage.sides[side].traverseVisible((object) => {
      if (object instanceof Mesh && object.userData.kind === 'channel') meshes.push(object);
    });
  return rayOf(stage, event).intersectObjects(meshes, false)[0]?.object.userData.subject;
}

function followPointer(stage: Stage, handles: () => readonly Handle[]): () => void {
  const { canvas } = stage;
  let grip: { readonly pointer: number; point: ChannelPoint; readonly side: Channel['half'] } | undefined;
  const nearest = ({ clientX, clientY, pointerType }: PointerEvent): Handle | undefined => {
    const box = canvas.getBoundingClientRect();
    const away = (handle: Handle): number => {
      const [x, y] = onCanvas(stage, handle);
      // A point that is there comes before one that would be new.
      return Math.hypot(x + box.left - clientX, y + box.top - clientY) + (isAdding(handle.point) ? 3 : 0);
    };
    const [best] = handles()
      .map((handle) => ({ handle, far: away(handle) }))
      .sort((a, b) => a.far - b.far);
    return best && best.far < (pointerType === 'touch' ? nearFinger : near) ? best.handle : undefined;
  };
  const down = (event: PointerEvent): void => {
    if (grip) event.stopImmediatePropagation();
    if (grip || openPanel.peek() !== 'filling' || event.button !== 0) return;
    const handle = nearest(event);
    if (!handle) {
      const id = channelUnder(stage, event);
      if (id !== undefined && movableChannels.peek().some((one) => one.id === id)) picked.value = id;
      return;
    }
    // Before the camera's own controls get it: what is taken does not turn the picture.
    event.stopImmediatePropagation();
    event.preventDefault();
    canvas.setPointerCapture(event.pointerId);
    if (isAdding(handle.point)) addPoint(handle.point.before, handle.at);
    const point = isAdding(handle.point) ? handle.point.before : handle.point;
    grip = { pointer: event.pointerId, point, side: handle.side };
  };
  const move = (event: PointerEvent): void => {
    if (grip?.pointer !== event.pointerId) return;
    event.stopImmediatePropagation();
    const at = onPlane(stage, event, grip.side);
    if (at) holdPoint(grip.point, at);
  };
  const up = (event: PointerEvent): void => {
    if (grip?.pointer !== event.pointerId) return;
    event.stopImmediatePropagation();
    grip = undefined;
    if (event.type === 'pointercancel') cancelHold();
    else release();
  };
  const listeners = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: up };
  for (const [name, listen] of Object.entries(listeners))
    canvas.addEventListener(name, listen as EventListener, { capture: true });
  return () => {
    for (const [name, listen] of Object.entries(listeners))
      canvas.removeEventListener(name, listen as EventListener, { capture: true });
  };
}
