import { codes } from './entry.ts';

export const solidCodes = codes({
  'solid.not-closed': {
    severity: 'stop',
    means: 'A solid came out with open or doubled edges and is withheld.',
    remedy: 'Report this with the plan: it is a fault of the program.',
  },
  'solid.failed': {
    severity: 'stop',
    means: 'The geometry kernel could not make a solid.',
    remedy: 'Look at the placement named: a master may touch or cross something it should not.',
  },
});
