import { codes } from './entry.ts';

const guard =
  'Keep the machine behind its interlocked guard, and go by its maker\u2019s limits and local codes.';

/** The mold as it turns: balance, metal under pressure, speed. */
export const turningCodes = codes({
  'balance.not-checked': {
    severity: 'note',
    means: 'The plan leaves out what the balance or its limit is found from; that part is not checked.',
    remedy: 'Add what is named to the plan.',
  },
  'balance.over': {
    formula: 'sum of m r as cast, in whole and carried to both outer faces, against U = 1000 G m / omega',
    source: 'ISO 21940-11:2016 (formerly ISO 1940-1)',
    severity: 'warn',
    means: 'As cast, the mold is further out of balance than the grade allows at this speed: it shakes.',
    remedy: 'Move the heavy side inward, spread it, or balance it by a dummy cavity.',
  },
  'balance.machine': {
    formula: 'sum of m r as cast, against the limit in `machine.maxUnbalance`',
    source: "limit by the machine's maker, as the plan gives it",
    severity: 'stop',
    means: 'As cast, the mold is further out of balance than the machine stands.',
    remedy: `Lay the masters out anew, or fix a mass opposite the heavy side. ${guard}`,
    safety: true,
  },
  'balance.misrun': {
    formula: 'sum of m r with the metal of the worst cavity left out, against `machine.maxUnbalance`',
    source: "limit by the machine's maker, as the plan gives it",
    severity: 'warn',
    means: 'Should one cavity stay empty, the mold is further out of balance than the machine stands.',
    remedy: `Move that cavity inward, or run slower. ${guard}`,
  },
});
