import { useEffect, useRef } from 'preact/hooks';
import { layers } from '../scene/layers/index.ts';
import { Stage } from '../scene/stage.ts';
import { fault } from '../state/store.ts';
import { look, viewNames } from '../state/view.ts';
import { ShowBar } from './show-bar.tsx';

/** The canvas, the named views, and what is shown. */
export function Picture() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useRef<HTMLDivElement>(null);
  useEffect(
    () => (canvas.current && words.current ? startPicture(canvas.current, words.current) : undefined),
    [],
  );
  return (
    <>
      {/* Arrow keys pan, as said in its label. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is moved by keys */}
      <canvas
        ref={canvas}
        tabIndex={0}
        aria-label="Picture of the mold. Drag to turn it; arrow keys move it."
      />
      <div ref={words} class="words" aria-hidden="true" />
      <fieldset class="views">
        <legend class="unseen">Look</legend>
        {viewNames.map((name) => (
          <button key={name} type="button" onClick={() => look(name)}>
            {name}
          </button>
        ))}
        <button type="button" onClick={() => look('fit')}>
          show all
        </button>
      </fieldset>
      <ShowBar />
    </>
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
