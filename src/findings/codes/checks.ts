import { codes } from './entry.ts';

export const checkCodes = codes({
  'cover.thin': {
    severity: 'stop',
    means: 'Too little rubber is left between a cavity and an outer face.',
    remedy: 'Take the next thicker stock, or sink the master differently.',
  },
});
