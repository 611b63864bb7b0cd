import { codes } from './entry.ts';
import { notChecked } from './not-said.ts';

/** A run of castings: order and cost. */
export const orderCodes = codes({
  'order.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what metal or time of the order are found from.',
    says: 'What the order takes is in part not found: the plan does not say {missing}.',
  },
  'order.unplaced': {
    severity: 'warn',
    means: 'Castings of a master are ordered that has no place on this disc.',
    formula: 'pieces of a master that `order` names, and no placement of it; over 0',
    source: 'count',
    values: { measured: 'count' },
    says: '{measured, plural, one {# casting} other {# castings}} of {subject} are ordered, but it lies nowhere on this disc.',
    remedy: 'Place it on the disc, or order it from another mold.',
  },
  'cost.not-checked': {
    ...notChecked,
    means: 'The plan leaves out what the cost is found from, in whole or in part.',
    says: 'What a casting costs is in part not found: the plan does not say {missing}.',
  },
});
