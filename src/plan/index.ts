export { addMaster, type NewMaster } from './by-hand/add-master.ts';
export { findItem, type Item, type ItemName } from './by-hand/item.ts';
export { changedLines, type Merged, mergeTexts } from './by-hand/merge-texts.ts';
export { type Company, type Move, moveItem } from './by-hand/move-item.ts';
export { removeItem } from './by-hand/remove-item.ts';
export { repeatRound } from './by-hand/repeat-item.ts';
export type { Edited } from './by-hand/splice.ts';
export * from './defaults.ts';
export * from './expand-placements.ts';
export { filesNamed, leadsOut } from './files-named.ts';
export { nearestName } from './nearest-name.ts';
export type {
  Plan,
  PlanBench,
  PlanBoss,
  PlanChannel,
  PlanMaster,
  PlanNotch,
  PlanPlacement,
  PlanSupport,
  PlanTab,
} from './plan.ts';
export type { PlanPath } from './plan-tree.ts';
export { type Quantity, quantityFinding, readQuantity } from './quantity.ts';
export { type PlanReading, type PlanSource, readPlan, writePlan } from './read-plan.ts';
export { resolveRadius } from './resolve-radius.ts';
export { planJsonSchema } from './schema.ts';
export { asNeeded } from './sections/closing.ts';
export type { Size } from './sections/fields.ts';
export type { PlaceAngle, RadiusSpec, Sink } from './sections/placements.ts';
export { type Divided, resolveAngle, sectorCount } from './sectors.ts';
export { type StarterOptions, starterPlan } from './starter-plan.ts';
export type { KindName } from './unit-table.ts';
export { type Axis, combine, readAxis, type Setting } from './vary/axis.ts';
export { setInPlan } from './vary/set-in-plan.ts';
