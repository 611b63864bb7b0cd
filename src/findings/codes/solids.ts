import { codes } from './entry.ts';

export const solidCodes = codes({
  'solid.not-closed': {
    severity: 'stop',
    means: 'A solid came out with open or doubled edges and is withheld.',
    remedy: 'Report this with the plan: it is a fault of the program.',
  },
  'solid.renamed': {
    severity: 'note',
    means: 'Two solids would have had the same file name; the later one got a number.',
    remedy: 'Give the tab, boss or placement another `id` if you want to choose the name.',
  },
  'solid.failed': {
    severity: 'stop',
    means: 'The geometry kernel could not make a solid.',
    remedy: 'Look at the placement named: a master may touch or cross something it should not.',
  },
});
