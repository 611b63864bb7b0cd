import { useEffect } from 'preact/hooks';
import { filledShare, isPlaying, playOn, stopPlaying } from '../../state/filling.ts';

/** The filling as a film: by hand with the slider, or by itself. */
export function Play() {
  useEffect(() => stopPlaying, []);
  const percent = `${Math.round(filledShare.value * 100)} %`;
  return (
    <div class="slide play">
      <button type="button" onClick={() => (isPlaying.value ? stopPlaying() : playOn())}>
        {isPlaying.value ? 'Pause' : 'Play'}
      </button>
      <input
        type="range"
        aria-label="How full the cavities are"
        aria-valuetext={`${percent} full`}
        min={0}
        max={1}
        step={0.01}
        value={filledShare.value}
        onInput={({ currentTarget }) => {
          stopPlaying();
          filledShare.value = currentTarget.valueAsNumber;
        }}
      />
      <output>{percent} full</output>
    </div>
  );
}
