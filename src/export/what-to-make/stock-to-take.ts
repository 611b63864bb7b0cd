import type { Mold, Solid } from '../../mold/index.ts';
import { runs, showQuantity } from '../../wording/index.ts';
import { boltText } from '../bolt-text.ts';
import type { Build } from '../build.ts';
import { solidPath } from '../folders.ts';
import type { Listing } from './listing.ts';

type Row = readonly [count: number, what: string, use: string];

/** What is taken from the shelf or bought for this mold; nothing where it needs none. */
export function stockToTake(build: Build): Listing[] {
  const rows = [...capNuts(build), ...pullers(build), ...closing(build.mold)];
  if (rows.length === 0) return [];
  return [
    {
      title: 'To take from stock',
      columns: [
        { title: 'take', share: 0.07, align: 'right' },
        { title: 'what', share: 0.33 },
        { title: 'for', share: 0.6 },
      ],
      rows: rows.map(([count, what, use]) => [String(count), what, use]),
    },
  ];
}

/** Cap nuts are bought; their solids are for who has none. */
export const isBought = ({ role, subjects }: Solid, { bosses }: Mold): boolean =>
  role === 'boss' && bosses.some(({ id, kind }) => kind === 'cap nut' && subjects.includes(id));

function capNuts({ mold, solids }: Build): Row[] {
  const sizes = new Map<string, string[]>();
  for (const { id, kind, size } of mold.bosses)
    if (kind === 'cap nut') sizes.set(size, [...(sizes.get(size) ?? []), id]);
  return [...sizes].map(([size, ids]) => {
    const made = solids.find(
      ({ solid }) => isBought(solid, mold) && solid.subjects.some((id) => ids.includes(id)),
    );
    const instead = made ? `; or make ${solidPath(made.solid, mold)}` : '';
    return [ids.length, `cap ${ids.length === 1 ? 'nut' : 'nuts'} ${size}`, `${runs(ids)}${instead}`];
  });
}

/** One screw pulls what it is put into; each that has a pocket for an insert takes one. */
function pullers({ mold: { sprue }, solids }: Build): Row[] {
  if (!sprue?.puller) return [];
  const { screw, insert } = sprue.puller;
  const pulled = (['sprue form', 'plug'] as const).filter((role) =>
    solids.some(({ solid }) => solid.role === role),
  );
  if (pulled.length === 0) return [];
  const what = pulled.join(' and ');
  return [
    [1, `screw ${screw}`, `to pull ${what}`],
    ...(insert
      ? [
          [
            pulled.length,
            `heat-set ${pulled.length === 1 ? 'insert' : 'inserts'} ${screw}`,
            `in ${what}`,
          ] as const,
        ]
      : []),
  ];
}

/** A nut for each bolt, unless the can is tapped: common practice, no published source. */
function closing({ process, placements, bench, units }: Mold): Row[] {
  if (process !== 'rubber' || placements.length === 0) return [];
  const { bolts, clamps } = bench.closing ?? {};
  return [
    ...(bolts
      ? ([
          [bolts.count, `bolts ${boltText(bolts)}`, 'to draw the can shut'],
          [bolts.count, `hex nuts ${bolts.size}`, 'on the bolts, where the can is not tapped'],
        ] as const)
      : []),
    ...(clamps
      ? [
          [
            clamps.count,
            clamps.force === undefined
              ? 'clamps'
              : `clamps rated for ${showQuantity(clamps.force, 'N', units)}`,
            'to hold the can through the cure',
          ] as const,
        ]
      : []),
  ];
}
