export { coverOfCavities } from './cover.ts';
export { coverOfFixtures } from './cover-fixtures.ts';
export { leastCover } from './cover-least.ts';
export { coverOfParting } from './cover-parting.ts';
