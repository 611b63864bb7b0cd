export { wallsBetweenCavities } from './walls.ts';
export { wallsToBolts } from './walls-bolts.ts';
export { wallsToBosses } from './walls-bosses.ts';
export { wallsToChannels } from './walls-channels.ts';
export { wallsField } from './walls-field.ts';
export { wallsToRim } from './walls-rim.ts';
export { wallsToTabs } from './walls-tabs.ts';
export { wallsToWell } from './walls-well.ts';
