import type { SolidRole } from '../../kernel/index.ts';

/** What goes with which half when the mold is opened: `loose` things are lifted half as far as the upper half. */
export type Side = 'lower' | 'upper' | 'loose';

export interface Kind {
  readonly id: string;
  readonly title: string;
  /** In the light and in the dark picture alike: mid tones that stand out from both grounds. */
  readonly color: string;
}

/** Everything that can be shown or hidden by itself, in the order the mold is put together. */
export const kinds: readonly Kind[] = [
  { id: 'lower half', title: 'Lower half', color: '#7d9186' },
  { id: 'upper half', title: 'Upper half', color: '#b08a74' },
  { id: 'blank', title: 'Blank discs', color: '#a3a69b' },
  { id: 'master', title: 'Masters', color: '#c4cad0' },
  { id: 'sprue form', title: 'Sprue form', color: '#577792' },
  { id: 'plug', title: 'Plug', color: '#86a3b8' },
  { id: 'boss', title: 'Bosses', color: '#c39a3f' },
  { id: 'boss cup', title: 'Socket cups', color: '#a98f5a' },
  { id: 'build-up', title: 'Build-ups', color: '#8b789f' },
  { id: 'tab', title: 'Tabs', color: '#a9594f' },
  { id: 'notch', title: 'Notches', color: '#93705e' },
  { id: 'channel', title: 'Gates and vents', color: '#3f8f93' },
  { id: 'scaled master', title: 'Scaled masters', color: '#b4bcc4' },
  { id: 'pattern plate', title: 'Pattern plates', color: '#9c9a6c' },
  { id: 'jig', title: 'Jig', color: '#a2a878' },
  { id: 'layout plate', title: 'Layout plate', color: '#b3a184' },
  { id: 'nest', title: 'Nests of build-ups', color: '#93a07e' },
  { id: 'can part', title: 'Can parts', color: '#8793a0' },
  { id: 'gauge', title: 'Gauges', color: '#94a6a0' },
  { id: 'left by the cutter', title: 'Left by the cutter', color: '#b5563f' },
  { id: 'other', title: 'Other fixtures', color: '#8d8d8d' },
];

/** Not shown at first: what is no part of the closed mold, or would hide it. The plug takes the sprue form's place. */
export const hiddenAtFirst = [
  'plug',
  'blank',
  'scaled master',
  'boss cup',
  'notch',
  'jig',
  'layout plate',
  'nest',
  'can part',
  'gauge',
  'left by the cutter',
  'other',
];

const known = new Map(kinds.map((kind) => [kind.id, kind]));
export const kindOf = (id: string): Kind => known.get(id) ?? (known.get('other') as Kind);

/** The kind a solid is shown as. Halves and blanks are told apart by which half they are. */
export function kindOfSolid({ id, role }: { readonly id: string; readonly role: SolidRole }): Kind {
  if (role === 'half') return kindOf(id.startsWith('upper') ? 'upper half' : 'lower half');
  return kindOf(role);
}

export function sideOfSolid({ id, role }: { readonly id: string; readonly role: SolidRole }): Side {
  if (role === 'half' || role === 'blank' || role === 'pattern plate')
    return id.startsWith('upper') ? 'upper' : 'lower';
  if (role === 'boss cup') return 'upper';
  return role === 'sprue form' || role === 'plug' ? 'loose' : 'lower';
}
