export { filling } from './fill-check.ts';
export { changeOf } from './propose/change.ts';
export { type Proposal, proposeChannels } from './propose/propose.ts';
export { shownCavity } from './shown.ts';
export { toldAir } from './told-air.ts';
