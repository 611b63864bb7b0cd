import { useEffect, useRef } from 'preact/hooks';
import { layers } from '../scene/layers/index.ts';
import { Stage } from '../scene/stage.ts';
import { fault } from '../state/store.ts';
import { Progress } from './progress.tsx';

/** The canvas, with words over it. */
export function Picture() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useRef<HTMLDivElement>(null);
  useEffect(
    () => (canvas.current && words.current ? startPicture(canvas.current, words.current) : undefined),
    [],
  );
  return (
    <div class="stage">
      {/* Arrow keys pan, as said in its label. */}
      <canvas
        ref={canvas}
        tabIndex={0}
        aria-label="Picture of the mold. Drag to turn it; arrow keys move it."
      />
      <div ref={words} class="words" aria-hidden="true" />
      <Progress />
    </div>
  );
}

function startPicture(canvas: HTMLCanvasElement, words: HTMLElement): () => void {
  let stage: Stage;
  try {
    stage = new Stage(canvas, words);
  } catch {
    fault.value =
      'This browser cannot draw in 3D (WebGL2 is off); figures and findings are there all the same.';
    return () => {};
  }
  stage.controls.listenToKeyEvents(canvas);
  const resize = new ResizeObserver(() => {
    const { clientWidth, clientHeight } = canvas;
    stage.resize(clientWidth, clientHeight, window.devicePixelRatio);
  });
  resize.observe(canvas);
  stage.resize(canvas.clientWidth, canvas.clientHeight, window.devicePixelRatio);
  const stops = layers.map((layer) => layer(stage));
  return () => {
    resize.disconnect();
    for (const stop of stops) stop();
    stage.renderer.dispose();
  };
}
