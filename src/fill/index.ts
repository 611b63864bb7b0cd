export { filling } from './fill-check.ts';
export { changeOf } from './propose/change.ts';
export { type Proposal, proposeChannels } from './propose/propose.ts';
export { whereAir, whyGate, whyWay } from './propose/why.ts';
export { type ShownCavity, shownCavity } from './shown.ts';
export { stepTold, toldAir } from './told-air.ts';
export { ventDrain } from './vent-drain.ts';
