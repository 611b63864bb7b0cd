import { codes } from './entry.ts';

/** Play of the closed halves, release of castings, support of thin bits. */
export const releaseCodes = codes({
  'registration.mismatch': {
    severity: 'warn',
    means:
      'The bosses let the halves shift or turn so far that castings get a step along the parting line. ' +
      'The limit is from memory; set your own as `limits.mismatch`.',
    remedy: 'Give the bosses less clearance, or set them farther apart.',
  },
  'registration.no-flex': {
    severity: 'note',
    means: 'Play cannot be computed for rubber halves without knowing how far the rubber lets a boss move.',
    remedy: 'Add `registration: { flex: ... }`, the sideways give of a boss in its socket.',
  },
});
