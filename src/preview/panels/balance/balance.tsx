import { quantity } from '../../state/show.ts';
import { mold } from '../../state/store.ts';
import { type ShownUnbalance, unbalance } from '../../state/unbalance.ts';
import { FigureList } from '../figure-list.tsx';
import { FindingsAbout } from '../findings-about.tsx';
import type { Panel } from '../panel.ts';
import { DiscFromAbove } from './disc-from-above.tsx';

export const balance: Panel = {
  id: 'balance',
  title: 'Balance',
  hint: 'Which side of the filled mold is heavy, and how much of it the grade allows.',
  View: () => {
    const now = mold.value;
    const found = unbalance.value;
    if (!now) return <p>Reading the plan.</p>;
    return (
      <>
        {found ? (
          <>
            <DiscFromAbove mold={now} found={found} />
            <p class="remark">{said(found)}</p>
          </>
        ) : (
          <p>Balance is not known yet.</p>
        )}
        <FigureList
          names={[
            'balance.static',
            'balance.angle',
            'balance.permissible',
            'balance.lower',
            'balance.upper',
            'balance.empty',
            'balance.misrun',
            'balance.added',
            'balance.true',
            'balance.correction',
            'balance.rotor',
          ]}
        />
        <FindingsAbout families={['balance']} />
        <p class="remark">Never reach into a mold that turns.</p>
      </>
    );
  },
};

function said({ sizeGmm, allowedGmm, scale }: ShownUnbalance): string {
  const drawn = `Drawn 1 mm of the disc for each ${Number((1 / scale).toPrecision(3))} g.mm.`;
  if (allowedGmm === undefined)
    return `${drawn} What is allowed needs a speed, a grade and the mass of the plates.`;
  const verdict = sizeGmm <= allowedGmm ? 'The arrow ends within the circle' : 'The arrow leaves the circle';
  return `${verdict} of ${quantity(allowedGmm, 'g.mm')} the grade allows. ${drawn}`;
}
