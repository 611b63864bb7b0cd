import { useEffect } from 'preact/hooks';
import { requestWalls } from '../../state/actions.ts';
import { pointing } from '../../state/pointing.ts';
import { length } from '../../state/show.ts';
import { flyTo, mold, picked, pointedAt, solidsAreCurrent, walls } from '../../state/store.ts';
import { pose } from '../../state/view.ts';
import { dimensioned, type MeasuredWall, measuredWalls, middleOf } from '../../state/walls.ts';
import { clearTheWay } from '../clear-the-way.ts';
import { FindingsAbout } from '../findings-about.tsx';
import type { Panel } from '../panel.ts';
import { Rows } from '../rows.tsx';
import { Scale } from './scale.tsx';

export const wallsPanel: Panel = {
  id: 'walls',
  title: 'Walls',
  hint: 'How far every cavity is from whatever is nearest to it: other cavities, bosses, well, channels, outer faces.',
  View: () => {
    useEffect(clearTheWay, [pose.value]);
    const isMissing = solidsAreCurrent.value && walls.value === undefined;
    useEffect(() => {
      if (isMissing) requestWalls();
    }, [isMissing]);
    if (mold.value?.placements.length === 0) return <p>No cavity yet.</p>;
    return (
      <>
        <Scale />
        <p class="remark" aria-live="polite">
          {walls.value
            ? 'Measured at the corners of the mesh and blended between them.'
            : 'The colors come when the solids are done.'}
        </p>
        <h3>Thinnest walls</h3>
        <Thinnest walls={measuredWalls.value.slice(0, dimensioned)} />
        <h3>Findings</h3>
        <FindingsAbout families={['walls', 'cover']} />
      </>
    );
  },
};

function Thinnest({ walls: list }: { readonly walls: readonly MeasuredWall[] }) {
  if (list.length === 0) return <p>None measured yet.</p>;
  return (
    <Rows heads={['Between', 'Wall']} caption="The thinnest walls; pick one to see its place">
      {list.map((wall) => (
        <WallRow key={`${wall.label} ${wall.subject}`} wall={wall} />
      ))}
    </Rows>
  );
}

function WallRow({ wall }: { readonly wall: MeasuredWall }) {
  const { subject, label, thickness, ends, estimated, isThin } = wall;
  const [first] = subject.split(' ');
  return (
    <tr class={pointedAt.value === first ? 'is-near' : ''} {...pointing(first)}>
      <td>
        <button
          type="button"
          class="plain"
          onClick={() => {
            picked.value = first;
            flyTo.value = [...middleOf(ends)];
          }}
        >
          {subject.split(' ').join(' to ')}
          <span class="subject"> {label}</span>
        </button>
      </td>
      <td class={`number ${isThin ? 'is-thin' : ''}`}>
        {estimated ? '~ ' : ''}
        {length(thickness)}
        {isThin ? ' !' : ''}
      </td>
    </tr>
  );
}
