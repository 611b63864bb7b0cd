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
      {/* Its keys are said in its label. */}
      <canvas
        ref={canvas}
        tabIndex={0}
        aria-label="Picture of the mold. Drag to turn it; arrow keys move it, with Shift they turn it, plus and minus bring it nearer or farther."
      />
      <div ref={words} class="words" aria-hidden="true" />
      <Progress />
    </div>
  );
}

/** Keys that bring the picture nearer or farther; the plus is had with or without Shift. */
const zooms: Readonly<Record<string, number>> = { '+': 0.9, '=': 0.9, '-': 1 / 0.9 };

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
  canvas.addEventListener('keydown', ({ key }) => {
    const share = zooms[key];
    if (share !== undefined) stage.zoom(share);
    if (key.startsWith('Arrow')) stage.isMoved = true;
  });
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
