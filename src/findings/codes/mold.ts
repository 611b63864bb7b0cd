import { codes } from './entry.ts';

export const moldCodes = codes({
  'mold.outside-disc': {
    severity: 'stop',
    means: 'A master or fixture reaches past the rim of the disc.',
    remedy: 'Move it inward or choose a larger disc.',
  },
});
