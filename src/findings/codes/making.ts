import { codes } from './entry.ts';

const practice = 'common practice, no published source';

export const makingCodes = codes({
  'bed.split': {
    severity: 'note',
    means: 'A fixture is larger than the bed and comes in pieces that slide together.',
    remedy: 'Join the pieces on a flat plate, glue them, and check the diameter before use.',
  },
  'bed.cuts-outline': {
    severity: 'warn',
    means: 'No split line stays clear of every outline and boss; the seam will show there.',
    remedy: 'Use a larger bed, move the placement, or dress the seam by hand.',
    source: practice,
  },
  'bed.too-small': {
    severity: 'warn',
    means: 'A fixture does not fit the bed, and no sectors of it with a joint do; it is given whole.',
    remedy: 'Use a larger bed or have the piece made elsewhere.',
  },
  'bed.too-high': {
    severity: 'warn',
    means: 'A fixture is higher than the bed has room for.',
    remedy: 'Use a machine with more height, or print the fixture lying if its shape allows.',
  },
});
