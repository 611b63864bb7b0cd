export { freeSpace } from './free-space.ts';
export { engravedPlate, plateThickness } from './plate-body.ts';
export type { LabelWish } from './plate-labels.ts';
export { letterPlate } from './plate-lettering.ts';
export {
  bossHoles,
  holds,
  outerRings,
  roomBehind,
  type Standing,
  shaftHole,
  standingOn,
} from './plate-openings.ts';
export { overlapsAmong, overlapsBetween } from './plate-overlaps.ts';
export {
  type FindTitlePlace,
  layOutTitle,
  type PlanNames,
  planWords,
  type Title,
  type TitlePlace,
  titlePlaceOnPlate,
  titlePlaceOnRing,
} from './plate-title.ts';
export { drawnTo, wider } from './plate-window.ts';
export { indexCut, type RimCut, rimTrack } from './rim-track.ts';
