import { codes } from './entry.ts';

export const planCodes = codes({
  'plan.unreadable': {
    severity: 'stop',
    means: 'The plan file cannot be read as YAML text.',
    remedy: 'Correct the place named.',
  },
});
