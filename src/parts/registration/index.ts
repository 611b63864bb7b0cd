export { headBody, imprintBody, pocketBody, socketBody } from './boss-body.ts';
export { bossCups } from './boss-cups.ts';
export { bosses } from './bosses.ts';
export { notch, notchCutter } from './notch.ts';
export { registrationJig } from './registration-jig.ts';
export { tab, tabRecess } from './tab.ts';
