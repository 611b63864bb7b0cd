export { addMaster, freeName } from './by-hand/add-master.ts';
export {
  type ChannelMove,
  type ChannelName,
  findChannel,
  type WayPoint,
  withMovedChannel,
} from './by-hand/find-channel.ts';
export type { ItemName } from './by-hand/item.ts';
export { changedLines, mergeTexts } from './by-hand/merge-texts.ts';
export { moveChannel, removeChannel } from './by-hand/move-channel.ts';
export { type Company, type Move, moveItem } from './by-hand/move-item.ts';
export { removeItem } from './by-hand/remove-item.ts';
export { repeatRound } from './by-hand/repeat-item.ts';
export type { Edited } from './by-hand/splice.ts';
export { type NewPlacement, writeArrangement } from './by-hand/write-arrangement.ts';
export { type ListChange, writeChannels } from './by-hand/write-channels.ts';
export * from './defaults.ts';
export * from './expand-placements.ts';
export { filesNamed, leadsOut } from './files-named.ts';
export { nearestName } from './nearest-name.ts';
export type { NumberWritten } from './numbers-written.ts';
export type {
  Plan,
  PlanBench,
  PlanBoss,
  PlanChannel,
  PlanMaster,
  PlanRunner,
  PlanVentPin,
} from './plan.ts';
export { quantityFinding, readQuantity } from './quantity.ts';
export { readBySchema, type TextKind, theFirst } from './read-by-schema.ts';
export { type PlanReading, readPlan, writePlan } from './read-plan.ts';
export { resolveRadius } from './resolve-radius.ts';
export { planJsonSchema } from './schema.ts';
export { namesOfSchema } from './schema-at.ts';
export type { ChannelEntry, ChannelPath, EntryPlace } from './sections/channels.ts';
export { asNeeded } from './sections/closing.ts';
export { count, id, length, line, quantity, renamed, type Size, share, word } from './sections/fields.ts';
export type { PlaceAngle, RadiusSpec } from './sections/placements.ts';
export { resolveAngle, sectorCount } from './sectors.ts';
export type { StarterPiece } from './starter-pieces.ts';
export { type StarterOptions, starterPlan, usualHalf } from './starter-plan.ts';
export type { KindName } from './unit-table.ts';
export { type Axis, combine, readAxis, type Setting } from './vary/axis.ts';
export { setInPlan } from './vary/set-in-plan.ts';
