export { filling } from './fill-check.ts';
export { changeOf } from './propose/change.ts';
export { type Proposal, proposeChannels } from './propose/propose.ts';
export { type ShownCavity, shownCavity } from './shown.ts';
