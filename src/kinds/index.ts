import { bossCups } from './boss-cups.ts';
import { bosses } from './bosses.ts';
import { buildUp } from './build-up.ts';
import { canParts } from './can-parts.ts';
import { depthGauge } from './depth-gauge.ts';
import { discBlank } from './disc-blank.ts';
import { halves } from './halves.ts';
import type { SolidKind } from './kind.ts';
import { knifeStencil } from './knife-stencil.ts';
import { layoutPlate } from './layout-plate.ts';
import { leftByCutter } from './left-by-cutter.ts';
import { nest } from './nest.ts';
import { notch } from './notch.ts';
import { patternPlate } from './pattern-plate.ts';
import { plug } from './plug.ts';
import { registrationJig } from './registration-jig.ts';
import { scaledMaster } from './scaled-master.ts';
import { sprueForm } from './sprue-form.ts';
import { tab } from './tab.ts';

export type { Look, SolidKind } from './kind.ts';

/** Kinds of solids and drawings that a build makes, in the order a plan's schema names them. */
export const kinds = [
  discBlank,
  halves,
  leftByCutter,
  sprueForm,
  plug,
  bosses,
  bossCups,
  tab,
  notch,
  buildUp,
  nest,
  scaledMaster,
  patternPlate,
  registrationJig,
  canParts,
  depthGauge,
  knifeStencil,
  layoutPlate,
] as const;

type KnownSolidKind = Extract<(typeof kinds)[number], SolidKind>;

/** What a solid is for. */
export type SolidRole = KnownSolidKind['role'];

/** Those of solids, in the order the mold is put together. */
export const solidKinds: readonly (SolidKind & { readonly role: SolidRole })[] = kinds
  .filter((kind): kind is KnownSolidKind => 'role' in kind)
  .sort((a, b) => a.order - b.order);

const byRole: ReadonlyMap<string, SolidKind> = new Map(solidKinds.map((kind) => [kind.role, kind]));

export function kindOfRole(role: SolidRole): SolidKind {
  const kind = byRole.get(role);
  if (!kind) throw new Error(`no kind of solid has the role ${role}`);
  return kind;
}
