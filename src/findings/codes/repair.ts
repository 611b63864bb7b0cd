import { codes } from './entry.ts';

export const repairCodes = codes({
  'repair.holes-closed': {
    severity: 'warn',
    means: 'A master had open edges; its small holes were closed.',
    remedy: 'Look at the closed places; mend the master in its own program if the shape matters there.',
  },
});
