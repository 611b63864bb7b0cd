import { kindOfRole, type Look, type SolidKind, type SolidRole, solidKinds } from '../../kinds/index.ts';

/** What goes with which half when the mold is opened: `loose` things are lifted half as far as the upper half. */
export type Side = 'lower' | 'upper' | 'loose';

export interface Kind extends Look, Pick<SolidKind, 'order' | 'shownAtFirst'> {
  readonly id: string;
}

/** A kind of solid as it is shown or hidden: the halves each by itself, all else at once. */
const asShown = ({ role, look, order, shownAtFirst }: SolidKind): Kind[] =>
  'title' in look
    ? [{ id: role, ...look, order, shownAtFirst }]
    : (['lower', 'upper'] as const).map((half) => ({
        id: `${half} ${role}`,
        ...look[half],
        order,
        shownAtFirst,
      }));

/** Everything that can be shown or hidden by itself, in the order the mold is put together. */
export const kinds: readonly Kind[] = [
  ...solidKinds.flatMap(asShown),
  { id: 'master', title: 'Masters', color: '#c4cad0', order: 3, shownAtFirst: true } as const,
  { id: 'channel', title: 'Gates and vents', color: '#3f8f93', order: 11, shownAtFirst: true } as const,
].sort((a, b) => a.order - b.order);

const idsOf = (chosen: readonly Kind[]): readonly string[] => chosen.map(({ id }) => id);

export const hiddenAtFirst = idsOf(kinds.filter(({ shownAtFirst }) => !shownAtFirst));
/** The mold itself, with its cavities or without. */
export const halves = idsOf(solidKinds.filter(({ madeOf }) => madeOf === 'half').flatMap(asShown));
/** What stands in the pouring hole and lies over the parting face. */
export const loose = idsOf(solidKinds.filter(({ side }) => side === 'loose').flatMap(asShown));

const known = new Map(kinds.map((kind) => [kind.id, kind]));
export function kindOf(id: string): Kind {
  const kind = known.get(id);
  if (!kind) throw new Error(`nothing of the kind ${id} is shown`);
  return kind;
}

/** Of what there is one for each half, the id begins with which. */
const halfOf = (id: string): 'lower' | 'upper' => (id.startsWith('upper') ? 'upper' : 'lower');

/** The kind a solid is shown as. */
export function kindOfSolid({ id, role }: { readonly id: string; readonly role: SolidRole }): Kind {
  return kindOf('title' in kindOfRole(role).look ? role : `${halfOf(id)} ${role}`);
}

export function sideOfSolid({ id, role }: { readonly id: string; readonly role: SolidRole }): Side {
  const { side } = kindOfRole(role);
  return side === 'of its half' ? halfOf(id) : side;
}
