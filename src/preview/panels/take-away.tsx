import { saysOfAll } from '../../wording/index.ts';
import { cancelBuild, requestFiles } from '../state/actions.ts';
import { askPicture } from '../state/snapshot.ts';
import { drawings, solidsAreCurrent, step, stls, withheld } from '../state/store.ts';
import { systemNow } from '../state/view.ts';
import type { Panel } from './panel.ts';

export const takeAwayPanel: Panel = {
  id: 'take-away',
  title: 'Take away',
  hint: 'Files to print, machine or pour from: the same the command writes.',
  View: () => {
    const ready = solidsAreCurrent.value;
    return (
      <>
        <p>
          <button type="button" class="main" disabled={!ready} onClick={() => requestFiles()}>
            All fixtures as a zip
          </button>
        </p>
        <Making ready={ready} />
        <h3>Only a part of it</h3>
        <p class="buttons">
          <Take ready={ready} formats={['3mf']} says="One 3MF of all solids to make" />
          <Take ready={ready} formats={['sheet']} says="Shop sheet (PDF)" />
          {drawings.value > 0 && (
            <>
              <Take ready={ready} formats={['svg']} says="Drawings (SVG)" />
              <Take ready={ready} formats={['dxf']} says="Drawings (DXF)" />
            </>
          )}
          <button type="button" class="chip" onClick={askPicture}>
            Picture as it is seen now (PNG)
          </button>
        </p>
        {ready && stls.value.length > 0 && (
          <>
            <h3>One solid as STL</h3>
            <ul class="names">
              {stls.value.map((name) => (
                <li key={name}>
                  <button type="button" class="plain" onClick={() => requestFiles(['stl'], name)}>
                    {name}
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
        {withheld.value.map(({ title, reasons }) => (
          <p key={title} class="withheld">
            Withheld: {title}. {saysOfAll(reasons, systemNow()).join(' ')}
          </p>
        ))}
        <p class="remark">
          Wear what the shop's rules ask for; local codes and the makers' limits come first.
        </p>
      </>
    );
  },
};

/** What is being made, with a way to leave it off. */
function Making({ ready }: { readonly ready: boolean }) {
  const now = step.value;
  if (!now) return ready ? null : <p>The solids are not made yet.</p>;
  return (
    <p class="making">
      <progress aria-label="How far it is" max={Math.max(1, now.total)} value={now.done} />
      <span>{now.title}</span>
      <button type="button" class="chip" onClick={cancelBuild}>
        Leave off
      </button>
    </p>
  );
}

interface TakeProps {
  readonly ready: boolean;
  readonly formats: readonly string[];
  readonly says: string;
}

function Take({ ready, formats, says }: TakeProps) {
  return (
    <button type="button" class="chip" disabled={!ready} onClick={() => requestFiles(formats)}>
      {says}
    </button>
  );
}
